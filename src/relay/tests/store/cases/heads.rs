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

pub fn the_head_is_the_newest_frame(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(3);
    store.append(&run(&log)).unwrap();
    assert_eq!(
        store.head(vault.id, vault.device(0)),
        Ok(Some(log[2].head()))
    );
}

pub fn the_vector_has_every_log(store: &impl Place, vault: &mut Vault) {
    let logs = [vault.devices[0].log(2), vault.devices[1].log(0)];
    for log in &logs {
        store.append(&run(log)).unwrap();
    }
    let vector = store.vector(vault.id).unwrap();
    let mut expected = vec![
        (vault.device(0), logs[0][2].head()),
        (vault.device(1), logs[1][0].head()),
    ];
    expected.sort_by_key(|(device, _)| *device);
    assert_eq!(vector.iter().collect::<Vec<_>>(), expected);
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

pub fn devices_share_nothing(store: &impl Place, vault: &mut Vault) {
    let log = vault.log(2);
    store.append(&run(&log)).unwrap();
    assert_eq!(store.head(vault.id, vault.device(1)), Ok(None));
    assert_eq!(store.hashes(vault.id, vault.device(1), 1, 9), Ok(vec![]));
}

pub fn a_number_beyond_all_finds_nothing(store: &impl Place, vault: &mut Vault) {
    store.append(&run(&vault.log(2))).unwrap();
    let device = vault.device(0);
    assert_eq!(
        store.range(vault.id, device, u64::MAX, usize::MAX, usize::MAX),
        Ok(vec![])
    );
    assert_eq!(
        store.hashes(vault.id, device, u64::MAX, usize::MAX),
        Ok(vec![])
    );
}
