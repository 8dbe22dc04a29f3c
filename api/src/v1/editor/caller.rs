//! Who calls: settled before the body is read.

use actix_web::HttpRequest;
use actix_web::http::header::{AUTHORIZATION, HeaderValue, WWW_AUTHENTICATE};
use actix_web::web::Data;

use super::told::{away, told};
use crate::keys::desk::Caller;
use crate::keys::{Scope, secret};
use crate::problem::Problem;
use crate::problem::kinds::{KEY_IN_ADDRESS, KEY_LACKS_SCOPE, NO_KEY, NO_STORE};
use crate::publishing::{Desk, NotDone};
use crate::serving::node::Node;

/// A caller who may do this, and the desk to do it at.
pub(super) struct AtDesk {
    /// Who.
    pub(super) caller: Caller,
    desk: Desk,
    node: Node,
}

impl AtDesk {
    /// Settles who calls.
    pub(super) async fn come(request: &HttpRequest, scope: Scope) -> Result<Self, Problem> {
        let node = request.app_data::<Data<Option<Node>>>().and_then(|node| node.as_ref().clone());
        let node = node.ok_or_else(|| Problem::new(NO_STORE, "start the service with `--store` to edit rule sets"))?;
        if request.query_string().contains(secret::PREFIX) {
            let detail =
                "send the key in the header `authorization: Bearer …`; revoke the one that stood in the address";
            return Err(Problem::new(KEY_IN_ADDRESS, detail));
        }
        let header = request.headers().get(AUTHORIZATION).and_then(|value| value.to_str().ok());
        let key = header.and_then(|value| value.strip_prefix("Bearer ")).map(str::trim).ok_or_else(no_key)?.to_owned();
        let desk = node.desk.read().await.clone().ok_or_else(|| away("the store has been away since the start"))?;
        let asking = desk.clone();
        let found = node.handle.spawn(async move { asking.caller(&key).await }).await.map_err(Problem::broken)?;
        let caller = found.map_err(|error| told(NotDone::Store(error)))?.ok_or_else(no_key)?;
        if !caller.scopes.contains(&scope) {
            let detail = format!("the key `{}` is not made for `{scope}`", caller.id);
            return Err(Problem::new(KEY_LACKS_SCOPE, detail));
        }
        Ok(Self { caller, desk, node })
    }

    /// Works at the desk, where the connections of the store are at home.
    pub(super) async fn work<T, W>(&self, work: impl FnOnce(Desk, Caller) -> W) -> Result<T, Problem>
    where
        T: Send + 'static,
        W: Future<Output = Result<T, NotDone>> + Send + 'static,
    {
        let work = work(self.desk.clone(), self.caller.clone());
        self.node.handle.spawn(work).await.map_err(Problem::broken)?.map_err(told)
    }
}

fn no_key() -> Problem {
    let detail = "expected the header `authorization: Bearer lammas_…` with a key that is in force";
    Problem::new(NO_KEY, detail).with_header(WWW_AUTHENTICATE, HeaderValue::from_static("Bearer"))
}
