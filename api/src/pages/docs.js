// No validator: the page asks nobody but the service it came from.
window.onload = () => SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#calls",
  deepLinking: true,
  validatorUrl: null,
});
