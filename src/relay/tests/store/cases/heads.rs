use crate::Place;
use crate::sample::{Vault, run};

pub fn an_unknown_vault_has_nothing(store: &impl Place, vault: &mut Vault) {
    assert_eq!(store.roll(vault.id), Ok(vec![]));
    assert_eq!(store.head(vault.id, vault.device(0)), Ok(None));
    assert!(store.vector(vault.id).unwrap().is_empty());
    assert_eq!(store.size(vault.id), Ok(0));
}

pub fn an_open_vault_has_a_roll_and_no_logs(store: &impl Place, vault: &mut Vault) {
    let [first, _] = vault.statements();
    store.open(&first);
    assert_eq!(store.roll(vault.id), Ok(vec![first]));
    assert!(store.vector(vault.id).unwrap().is_empty());
}

pub fn vaults_share_nothing(store: &impl Place, vault: &mut Vault) {
    let mut other = Vault::new();
    store.append(&run(&vault.log(2))).unwrap();
    let log = other.log(1);
    store.append(&run(&log)).unwrap();
    assert_eq!(store.vector(other.id).unwrap().len(), 1);
    assert_eq!(store.head(vault.id, other.device(0)), Ok(None));
    assert_eq!(
        store.head(other.id, other.device(0)),
        Ok(Some(log[0].head()))
    );
    assert_eq!(
        store.range(vault.id, other.device(0), 1, 9, 9999),
        Ok(vec![])
    );
}
