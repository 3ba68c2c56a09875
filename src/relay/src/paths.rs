//! The relay's own addresses. The document that describes them (`openapi.json`) is tested against these.

/// Whether the relay runs.
pub const HEALTH: &str = "/relay/health";
/// What the relay answers, for programs.
pub const OPENAPI: &str = "/relay/openapi.json";
/// Whether what is kept can be reached.
pub const READY: &str = "/relay/ready";
/// Requests about a vault.
pub const VAULTS: &str = "/relay/v1/vaults/{vault}/{what}";
/// When there is something new in a vault.
pub const NEWS: &str = "/relay/v1/vaults/{vault}/news";

/// All of them.
pub const ALL: [&str; 5] = [HEALTH, OPENAPI, READY, VAULTS, NEWS];
