// A real server on a free port of this machine; it logs to its standard error.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";

/** Starts the program, which finds weather in this folder; `{ url, stop }`. */
export async function serve(program, weather) {
  const child = spawn(program, ["serve", "--listen", "127.0.0.1:0", "--log-format", "json", "--weather", weather], {
    stdio: ["ignore", "ignore", "pipe"],
    env: { PATH: process.env.PATH },
  });
  const ended = once(child, "exit");
  const address = new Promise((found, failed) => {
    // Read to its end, so that the server never waits to write.
    createInterface({ input: child.stderr }).on("line", (line) => {
      const at = line.match(/127\.0\.0\.1:(\d+)/);
      if (at) found(`http://127.0.0.1:${at[1]}/`);
    });
    ended.then(([code]) => failed(new Error(`the server ended with ${code} before it listened`)));
  });
  const url = await address;
  return {
    url,
    stop: async () => {
      child.kill("SIGTERM");
      await ended;
    },
  };
}
