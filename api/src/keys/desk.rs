//! Keys are made, found and revoked.

use serde_json::json;

use super::Scope;
use super::secret::{Secret, same};
use crate::publishing::desk::now_ms;
use crate::publishing::{Desk, NotDone, trail};
use crate::store::StoreError;
use crate::store::tables::keys::{self, KeptKey};
use crate::store::tables::sets;

/// The use of a key is noted no more often than this, in milliseconds.
const NOTED_MS: i64 = 60_000;

/// Who calls.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caller {
    /// As the audit trail names it: `key 1f2e… (till)`.
    pub who: String,
    /// The public part of the key.
    pub id: String,
    /// What it may do.
    pub scopes: Vec<Scope>,
}

impl Desk {
    /// Makes a key, which can be shown now and never again.
    ///
    /// # Errors
    /// The store fails, or the name is not one.
    pub async fn new_key(
        &self,
        name: &str,
        scopes: &[Scope],
        expires_ms: Option<i64>,
        who: &str,
    ) -> Result<Secret, NotDone> {
        if name.is_empty() || name.chars().count() > 60 || name.chars().any(char::is_control) {
            return Err(NotDone::Wrong("the name of a key: expected 1 to 60 characters".to_owned()));
        }
        let (secret, now) = (Secret::new()?, now_ms());
        let names: Vec<&str> = scopes.iter().map(|scope| scope.name()).collect();
        let key = KeptKey {
            id: secret.id().to_owned(),
            organisation: sets::OWN.to_owned(),
            name: name.to_owned(),
            hash: secret.hash(),
            scopes: names.join(" "),
            made_by: who.to_owned(),
            made_ms: now,
            expires_ms,
            revoked_ms: None,
            last_used_ms: None,
        };
        let mut work = self.store.begin().await?;
        sets::put_organisation(&mut *work, sets::OWN, "The owner of this store", now).await?;
        keys::insert(&mut *work, &key).await?;
        let detail = json!({"name": name, "scopes": names, "expires_ms": expires_ms});
        trail::append(&mut *work, &self.keyring, (who, "new-key", &key.id), &detail, now).await?;
        work.commit().await?;
        Ok(secret)
    }

    /// Revokes a key.
    ///
    /// # Errors
    /// [`NotDone::Missing`] when there is none that could be.
    pub async fn revoke_key(&self, id: &str, who: &str) -> Result<(), NotDone> {
        let mut work = self.store.begin().await?;
        let now = now_ms();
        if !keys::revoke(&mut *work, id, now).await? {
            return Err(NotDone::Missing(format!("no key has the id `{id}`, or it was revoked before")));
        }
        trail::append(&mut *work, &self.keyring, (who, "revoke-key", id), &json!({}), now).await?;
        work.commit().await?;
        Ok(())
    }

    /// Who calls with this text; nobody when the key is mistyped, unknown, revoked or over: which of them is not said.
    ///
    /// # Errors
    /// The store fails.
    pub async fn caller(&self, text: &str) -> Result<Option<Caller>, StoreError> {
        let Some(secret) = Secret::parse(text) else { return Ok(None) };
        let now = now_ms();
        let mut work = self.store.read().await?;
        let kept = keys::find(&mut *work, secret.id()).await?;
        drop(work);
        let hash = kept.as_ref().map_or("", |key| key.hash.as_str());
        let fits = same(hash, &secret.hash());
        let Some(key) = kept else { return Ok(None) };
        if !fits || key.revoked_ms.is_some() || key.expires_ms.is_some_and(|end| end <= now) {
            return Ok(None);
        }
        if key.last_used_ms.is_none_or(|last| now - last > NOTED_MS) {
            let mut work = self.store.begin().await?;
            keys::used(&mut *work, &key.id, now).await?;
            work.commit().await?;
        }
        let scopes = key.scopes.split(' ').filter_map(Scope::find).collect();
        Ok(Some(Caller { who: format!("key {} ({})", key.id, key.name), id: key.id, scopes }))
    }
}
