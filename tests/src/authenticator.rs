//! What a tablet unlocks itself with, played by Chromium: its protocol's virtual authenticator, which answers to the extension
//! for keys (PRF). Its commands stand in the browser’s own debugging protocol, domain `WebAuthn`.

use crate::Hand;
use anyhow::{Context, Result};
use serde_json::{Value, json};

/// One that is put into a tab's browser for as long as that lives.
pub struct Authenticator {
    hand: Hand,
    id: String,
}

impl Authenticator {
    /// Puts one in that belongs to the tablet, keeps keys, and knows whoever holds a finger on it.
    ///
    /// # Errors
    /// Where this isn't Chromium, or it has none.
    pub async fn put_in(hand: &Hand) -> Result<Self> {
        let browser = hand.driver().cdp();
        browser.send_raw("WebAuthn.enable", json!({})).await?;
        let options = json!({ "options": {
            "protocol": "ctap2", "ctap2Version": "ctap2_1", "transport": "internal", "hasResidentKey": true,
            "hasUserVerification": true, "hasPrf": true, "isUserVerified": true, "automaticPresenceSimulation": true,
        }});
        let added = browser
            .send_raw("WebAuthn.addVirtualAuthenticator", options)
            .await?;
        let id = added["authenticatorId"].as_str();
        let id = id.context("the authenticator has no id")?.to_owned();
        Ok(Self {
            hand: hand.clone(),
            id,
        })
    }

    /// From now on no finger is the owner's. After the first that isn't, it is blocked, as a real one is after a few.
    ///
    /// # Errors
    /// Where the browser doesn't answer.
    pub async fn knows_nobody(&self) -> Result<()> {
        self.ask("setUserVerified", json!({ "isUserVerified": false }))
            .await
            .map(drop)
    }

    /// How many keys it keeps.
    ///
    /// # Errors
    /// Where the browser doesn't answer.
    pub async fn keys(&self) -> Result<usize> {
        let kept = self.ask("getCredentials", json!({})).await?;
        let kept = kept["credentials"].as_array();
        Ok(kept.context("no list of keys")?.len())
    }

    async fn ask(&self, what: &str, mut with: Value) -> Result<Value> {
        with["authenticatorId"] = self.id.clone().into();
        let method = format!("WebAuthn.{what}");
        let answer = self.hand.driver().cdp().send_raw(&method, with).await;
        answer.with_context(|| method)
    }
}
