use crate::sample::{Vault, run};
use lightround_relay::store::{Desk, Opening, Summary};
use std::thread;
use sync::exchange::Why;

/// A code that no other test gives.
fn code(vault: &Vault) -> [u8; 32] {
    let mut code = [0; 32];
    code[..16].copy_from_slice(vault.id.as_bytes());
    code
}

pub fn an_invitation_opens_one_vault(store: &impl Desk, vault: &mut Vault) {
    let ([first, _], [other, _]) = (vault.statements(), Vault::new().statements());
    store.invite(code(vault), 100).unwrap();
    assert_eq!(
        store.open_vault(code(vault), 99, &first),
        Ok(Opening::Opened)
    );
    assert_eq!(store.roll(vault.id), Ok(vec![first]));
    assert_eq!(
        store.open_vault(code(vault), 99, &other),
        Ok(Opening::NoInvitation)
    );
    assert_eq!(store.roll(other.vault), Ok(vec![]));
}

pub fn an_invitation_ends(store: &impl Desk, vault: &mut Vault) {
    let [first, _] = vault.statements();
    store.invite(code(vault), 100).unwrap();
    assert_eq!(
        store.open_vault(code(vault), 100, &first),
        Ok(Opening::NoInvitation)
    );
    assert_eq!(store.roll(vault.id), Ok(vec![]));
}

pub fn a_code_that_was_never_given_opens_nothing(store: &impl Desk, vault: &mut Vault) {
    let [first, _] = vault.statements();
    let mut other = code(vault);
    other[31] = 1;
    store.invite(code(vault), 100).unwrap();
    assert_eq!(
        store.open_vault(other, 99, &first),
        Ok(Opening::NoInvitation)
    );
}

pub fn the_same_opening_again_is_a_success(store: &impl Desk, vault: &mut Vault) {
    let [first, _] = vault.statements();
    store.invite(code(vault), 100).unwrap();
    for now in [98, 99, 1000] {
        assert_eq!(
            store.open_vault(code(vault), now, &first),
            Ok(Opening::Opened)
        );
    }
    assert_eq!(store.roll(vault.id).unwrap().len(), 1);
}

pub fn another_opening_of_the_same_vault_is_refused(store: &impl Desk, vault: &mut Vault) {
    let ([first, second], opened) = (vault.statements(), code(vault));
    store.invite(opened, 100).unwrap();
    store.open_vault(opened, 99, &first).unwrap();
    assert_eq!(store.open_vault(opened, 99, &second), Ok(Opening::Taken));
    assert_eq!(store.roll(vault.id), Ok(vec![first]));
}

pub fn a_refused_opening_uses_nothing_up(store: &impl Desk, vault: &mut Vault) {
    let ([first, second], mut other) = (vault.statements(), code(vault));
    other[31] = 1;
    store.invite(code(vault), 100).unwrap();
    store.open_vault(code(vault), 99, &first).unwrap();
    store.invite(other, 100).unwrap();
    assert_eq!(store.open_vault(other, 99, &second), Ok(Opening::Taken));
    let [elsewhere, _] = Vault::new().statements();
    assert_eq!(store.open_vault(other, 99, &elsewhere), Ok(Opening::Opened));
}

pub fn of_many_at_once_one_uses_the_invitation(store: &impl Desk, vault: &mut Vault) {
    let firsts: Vec<_> = (0..6).map(|_| Vault::new().statements()[0]).collect();
    let shared = code(vault);
    store.invite(shared, 100).unwrap();
    let opened = thread::scope(|scope| {
        let tries: Vec<_> = firsts
            .iter()
            .map(|first| scope.spawn(move || store.open_vault(shared, 99, first)))
            .collect();
        let ended = tries.into_iter().map(|one| one.join().unwrap());
        ended.filter(|ended| *ended == Ok(Opening::Opened)).count()
    });
    assert_eq!(opened, 1);
}

pub fn the_list_counts_what_is_there(store: &impl Desk, vault: &mut Vault) {
    let [first, _] = vault.statements();
    store.invite(code(vault), 100).unwrap();
    store.open_vault(code(vault), 42, &first).unwrap();
    let (log, other) = (vault.log(3), vault.devices[1].log(1));
    store.append(&run(&log[..2])).unwrap();
    store.append(&run(&other)).unwrap();
    store.set_aside(&log[2], Why::Fork).unwrap();
    let kept = log[..2].iter().chain(&other);
    let expected = Summary {
        vault: vault.id,
        opened: 42,
        devices: 2,
        frames: 4,
        bytes: kept.map(|frame| frame.bytes().len() as u64).sum(),
        aside: 1,
    };
    let listed = store.vaults().unwrap();
    assert_eq!(
        listed.iter().find(|line| line.vault == vault.id),
        Some(&expected)
    );
}

pub fn an_erased_vault_is_gone_and_others_stay(store: &impl Desk, vault: &mut Vault) {
    let [first, second] = vault.statements();
    store.invite(code(vault), 100).unwrap();
    store.open_vault(code(vault), 42, &first).unwrap();
    store.extend_roll(&second).unwrap();
    // More than are erased at a time.
    let (log, other) = (vault.log(1_300), vault.devices[1].log(0));
    for part in log.chunks(500) {
        store.append(&run(part)).unwrap();
    }
    store.append(&run(&other)).unwrap();
    let aside = vault.after(&log, b"aside");
    store.set_aside(&aside, Why::Fork).unwrap();
    let (mut stranger, stranger_code) = (Vault::new(), [7; 32]);
    let [theirs, _] = stranger.statements();
    let _ = store.invite(stranger_code, 100);
    store.open_vault(stranger_code, 42, &theirs).unwrap();
    let kept = stranger.log(2);
    store.append(&run(&kept)).unwrap();

    assert_eq!(store.erase(vault.id), Ok(Some(1_302)));
    assert_eq!(store.roll(vault.id), Ok(vec![]));
    assert_eq!(store.size(vault.id), Ok(0));
    assert_eq!(store.aside(vault.id, None, 9), Ok(vec![]));
    for device in [0, 1] {
        let left = store.range(vault.id, vault.device(device), 1, 9, usize::MAX);
        assert_eq!(left, Ok(vec![]));
    }
    let listed = store.vaults().unwrap();
    assert!(listed.iter().all(|line| line.vault != vault.id));
    assert_eq!(
        store.erase(vault.id),
        Ok(None),
        "a second time there is nothing"
    );
    assert_eq!(store.roll(stranger.id), Ok(vec![theirs]));
    assert_eq!(
        store.head(stranger.id, stranger.device(0)),
        Ok(Some(kept[1].head()))
    );
}

/// Frames without a vault, as they are while a vault is erased.
pub fn what_an_interruption_left_is_erased_by_the_next(store: &impl Desk, vault: &mut Vault) {
    let log = vault.log(3);
    store.append(&run(&log)).unwrap();
    assert_eq!(store.erase(vault.id), Ok(Some(3)));
    assert_eq!(store.erase(vault.id), Ok(None));
}

pub fn a_store_is_ready(store: &impl Desk, _: &mut Vault) {
    assert_eq!(store.ready(), Ok(()));
}
