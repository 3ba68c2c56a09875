use crate::Place;
use crate::sample::Vault;
use std::thread;
use vault::Role;

pub fn a_roll_is_in_order(store: &impl Place, vault: &mut Vault) {
    let [first, second] = vault.statements();
    let third = vault.next(1, Role::Lead);
    store.open(&first);
    assert_eq!(store.extend_roll(&second), Ok(true));
    assert_eq!(store.extend_roll(&third), Ok(true));
    assert_eq!(store.roll(vault.id), Ok(vec![first, second, third]));
}

pub fn a_roll_takes_only_the_next_number(store: &impl Place, vault: &mut Vault) {
    let [first, second] = vault.statements();
    let third = vault.next(1, Role::Lead);
    store.open(&first);
    assert_eq!(store.extend_roll(&third), Ok(false), "too early");
    assert_eq!(store.extend_roll(&first), Ok(false), "too late");
    assert_eq!(store.extend_roll(&second), Ok(true));
    assert_eq!(store.extend_roll(&second), Ok(false), "twice");
    assert_eq!(store.roll(vault.id), Ok(vec![first, second]));
}

pub fn a_roll_of_no_vault_takes_nothing(store: &impl Place, vault: &mut Vault) {
    let [first, second] = vault.statements();
    assert_eq!(
        store.extend_roll(&first),
        Ok(false),
        "a vault is opened, not slipped in"
    );
    assert_eq!(store.extend_roll(&second), Ok(false));
    assert_eq!(store.roll(vault.id), Ok(vec![]));
}

pub fn of_two_next_statements_one_comes_first(store: &impl Place, vault: &mut Vault) {
    let [first, second] = vault.statements();
    let rivals = [Role::Lead, Role::Clinician].map(|role| vault.next(1, role));
    store.open(&first);
    store.extend_roll(&second).unwrap();
    let added = thread::scope(|scope| {
        rivals
            .map(|rival| scope.spawn(move || store.extend_roll(&rival)))
            .map(|one| one.join().unwrap().unwrap())
    });
    assert_ne!(added[0], added[1]);
    assert_eq!(store.roll(vault.id).unwrap().len(), 3);
}
