//! From a draft to a release and back, on both stores.

use lammas::publishing::desk::now_ms;
use lammas::publishing::held::{HeldKind, Words};
use lammas::publishing::hold_back::Asked;
use lammas::publishing::{Desk, NotDone, statement};
use lammas::serving::{copy, node};
use lammas::store::tables::documents;
use lammas::store::tables::releases::{self, Release};
use lammas::store::tables::{audit, schedules};
use lammas::store::{StoreError, backup};
use lammas_engine::compile::set::Set;
use lammas_tests::stores::{both, wait};

use crate::garden::{edited, mini, renamed};

fn words(text: &str) -> Words {
    [("en".to_owned(), text.to_owned())].into()
}

fn asked(kind: HeldKind, entry: &str) -> Asked {
    Asked { kind, entry: entry.to_owned(), because: words("Burnt buds were seen."), caution: None }
}

async fn published(desk: &Desk, version: &str) -> Release {
    let draft = desk.import(&renamed(version), "", "ana").await.expect("a draft");
    desk.publish(&draft.id, None, "ana", None).await.expect("a release")
}

/// The set of a release, as a node tests it.
async fn served(desk: &Desk, release: &Release) -> std::sync::Arc<Set> {
    let mut work = desk.store.read().await.expect("reads");
    let document = documents::get(&mut *work, &release.document).await.expect("its files");
    node::tested(release, &document.files().expect("files"), &[], &desk.keyring).expect("it passes").set
}

#[test]
fn a_release_is_undone_in_one_step_and_so_is_the_undoing() {
    for (place, _folder) in both() {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            let first = published(&desk, "2026.11.1").await;
            let error = desk.undo("mini", None, "ana", None).await.expect_err("nothing before").to_string();
            assert_eq!(error, "nothing stood before the only release of `mini`");
            let second = published(&desk, "2026.11.2").await;
            assert_ne!(first.set_sha256, second.set_sha256);
            let undone = desk.undo("mini", Some(2), "bo", None).await.expect("undone");
            assert_eq!((undone.number, undone.place, undone.how.as_str()), (3, 3, "undo"));
            assert_eq!((&undone.set_sha256, &undone.version), (&first.set_sha256, &first.version));
            let again = desk.undo("mini", None, "bo", None).await.expect("undone");
            assert_eq!((&again.set_sha256, again.number), (&second.set_sha256, 4));
            assert!(matches!(desk.undo("mini", Some(2), "bo", None).await, Err(NotDone::Changed { revision: 4, .. })));
            assert!(undone.published_ms < again.published_ms, "moments of publishing never stand still");
            let mut work = desk.store.read().await.expect("reads");
            let acts: Vec<_> = audit::after(&mut *work, 0, 100)
                .await
                .expect("read")
                .into_iter()
                .map(|row| (row.who, row.act))
                .collect();
            let expected = [
                ("ana", "import"),
                ("ana", "publish"),
                ("ana", "import"),
                ("ana", "publish"),
                ("bo", "undo"),
                ("bo", "undo"),
            ];
            assert_eq!(acts.iter().map(|(who, act)| (who.as_str(), act.as_str())).collect::<Vec<_>>(), expected);
        });
    }
}

#[test]
fn a_draft_that_fails_its_check_or_scenarios_is_not_published() {
    for (place, _folder) in both() {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            for (files, said) in [
                (
                    edited("rules/rose.yaml", "season.heat_left < 550", "season.heat_lost < 550"),
                    "there is no fact or marker `season.heat_lost`",
                ),
                (
                    edited("rules/rose.yaml", "season.heat_left < 550", "season.heat_left < 5500"),
                    "scenarios come out otherwise",
                ),
            ] {
                let draft = desk.import(&files, "", "ana").await.expect("a draft may be faulty");
                match desk.publish(&draft.id, None, "ana", None).await {
                    Err(NotDone::Refused(told)) => assert!(told.contains(said), "{told}"),
                    other => panic!("{said}: {other:?}"),
                }
                assert_eq!(desk.draft(&draft.id).await.expect("there").state, "open");
            }
            let first = published(&desk, "2026.11.1").await;
            let other = edited("pack.yaml", "A small set", "A little set");
            let draft = desk.import(&other, "", "ana").await.expect("a draft");
            let error = desk.publish(&draft.id, None, "ana", None).await.expect_err("a used version").to_string();
            assert!(error.contains("2026.11.1 of `mini` was published with another content"), "{error}");
            let error = desk.import(&mini()[1..2], "", "ana").await.expect_err("no name").to_string();
            assert_eq!(error, "there is no `pack.yaml` among the files");
            let mut work = desk.store.read().await.expect("reads");
            assert_eq!(releases::newest_number(&mut *work).await.expect("read"), first.number);
        });
    }
}

#[test]
fn two_editors_of_a_draft_never_lose_a_change() {
    for (place, _folder) in both() {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            let draft = desk.import(&mini(), "", "ana").await.expect("a draft");
            let next = desk.change(&draft.id, 1, &renamed("2026.12.1"), Some("better"), "bo").await.expect("changed");
            assert_eq!((next.revision, next.note.as_str()), (2, "better"));
            let late = desk.change(&draft.id, 1, &renamed("2026.12.2"), None, "ana").await;
            assert!(matches!(late, Err(NotDone::Changed { revision: 2, .. })), "{late:?}");
            assert!(matches!(desk.publish(&draft.id, Some(1), "ana", None).await, Err(NotDone::Changed { .. })));
            assert_eq!(desk.publish(&draft.id, Some(2), "ana", None).await.expect("a release").version, "2026.12.1");
            let closed = desk.discard(&draft.id, None, "ana").await.expect_err("published").to_string();
            assert!(closed.ends_with("is published, not open"), "{closed}");
            assert!(matches!(desk.draft("draft-none").await, Err(NotDone::Missing(_))));
        });
    }
}

#[test]
fn what_is_held_back_is_held_at_once_stays_so_in_the_next_release_and_is_lifted_by_another_one() {
    for (place, _folder) in both() {
        wait(async {
            let desk = Desk::open(&place).await.expect("opens");
            published(&desk, "2026.11.1").await;
            let (held, number) =
                desk.hold_back("mini", &asked(HeldKind::Material, "garden-oil"), "ana", None).await.expect("held back");
            assert_eq!((held.version.as_str(), held.how.as_str(), number), ("2026.11.1+held.1", "hold-back", 1));
            let set = served(&desk, &held).await;
            let guard = set.pack.rules.iter().find(|rule| rule.entry.id.value == "guard.held-back-1").expect("a guard");
            assert_eq!(guard.entry.why.0.get("es").map(String::as_str), Some("Burnt buds were seen."));

            let caution = Asked { caution: Some(words("Try one shoot first.")), ..asked(HeldKind::Rule, "rose.feed") };
            let (cautioned, _) = desk.hold_back("mini", &caution, "ana", None).await.expect("a caution");
            let set = served(&desk, &cautioned).await;
            let rule = set.pack.rules.iter().find(|rule| rule.entry.id.value == "rose.feed").expect("the rule");
            assert!(rule.entry.cautions.iter().any(|caution| caution.value == "held-back-2"));

            let (sourced, _) = desk
                .hold_back("mini", &asked(HeldKind::Source, "common-practice"), "ana", None)
                .await
                .expect("held back");
            served(&desk, &sourced).await;
            let next = published(&desk, "2026.11.2").await;
            assert_eq!(next.version, "2026.11.2+held.1.2.3", "a new release keeps what is held back");

            for (kind, entry, words) in [
                (HeldKind::Rule, "rose.fed", "no rule has the id `rose.fed`, did you mean `rose.feed`?"),
                (HeldKind::Material, "oil", "no material has the id `oil`"),
            ] {
                let error =
                    desk.hold_back("mini", &asked(kind, entry), "ana", None).await.expect_err("refused").to_string();
                assert!(error.starts_with(words), "{error}");
            }
            let guard =
                desk.hold_back("mini", &asked(HeldKind::Rule, "guard.no-nitrogen-before-frost"), "ana", None).await;
            assert!(guard.is_err_and(|error| error.to_string().contains("would not be safer")));
            let silent = Asked { because: Words::new(), ..asked(HeldKind::Rule, "rose.feed") };
            assert!(desk.hold_back("mini", &silent, "ana", None).await.is_err());

            assert!(desk.review(1, true, "the batch is gone", "ana").await.is_err(), "not by the same one");
            let lifted = desk.review(1, true, "the batch is gone", "bo").await.expect("lifted").expect("a release");
            assert_eq!((lifted.version.as_str(), lifted.how.as_str()), ("2026.11.2+held.2.3", "lift"));
            served(&desk, &lifted).await;
            assert!(desk.review(2, false, "right", "bo").await.expect("reviewed").is_none());
            assert!(desk.review(2, true, "again", "bo").await.is_err(), "reviewed once");
        });
    }
}

#[test]
fn what_is_planned_is_published_once_as_approved_and_late_rather_than_never() {
    for (place, _folder) in both() {
        wait(async {
            let (desk, other) = (Desk::open(&place).await.expect("opens"), Desk::open(&place).await.expect("opens"));
            published(&desk, "2026.11.1").await;
            let draft = desk.import(&renamed("2027.3.1"), "", "ana").await.expect("a draft");
            let over = desk.schedule(&draft.id, None, ("2020-03-01 06:00", "UTC"), "ana").await;
            assert!(over.is_err_and(|error| error.to_string().ends_with("is over")));
            let planned =
                desk.schedule(&draft.id, None, ("2099-03-29 02:30", "Europe/Madrid"), "ana").await.expect("planned");
            assert!(planned.told.contains("never show"), "{}", planned.told);
            desk.change(&draft.id, 1, &renamed("2027.3.2"), None, "bo").await.expect("changed after it was planned");
            assert!(desk.fire(planned.at_ms - 1).await.expect("looked").is_empty(), "not before its time");
            let at = planned.at_ms + 3_600_000;
            let (one, two) = tokio_join(desk.fire(at), other.fire(at)).await;
            let fired: Vec<Release> = [one, two].into_iter().flat_map(Result::unwrap_or_default).collect();
            assert_eq!(fired.len(), 1, "two nodes publish it once");
            assert_eq!(
                (fired[0].version.as_str(), fired[0].how.as_str()),
                ("2027.3.1", "schedule"),
                "what was approved"
            );
            assert!(desk.fire(at).await.expect("looked").is_empty(), "once");
            let mut work = desk.store.read().await.expect("reads");
            let listed = schedules::list(&mut *work).await.expect("read");
            assert_eq!((listed[0].state.as_str(), listed[0].told.as_str()), ("fired", "3600 s late"));
            drop(work);

            let planned = desk.schedule(&draft.id, None, ("2099-04-01 06:00", "UTC"), "ana").await.expect("planned");
            desk.cancel(&planned.id, "ana").await.expect("taken back");
            assert!(desk.cancel(&planned.id, "ana").await.is_err());
            assert!(desk.fire(planned.at_ms).await.expect("looked").is_empty());
        });
    }
}

async fn tokio_join<A, B>(a: impl Future<Output = A>, b: impl Future<Output = B>) -> (A, B) {
    futures_util::future::join(a, b).await
}

#[test]
fn a_backup_taken_while_serving_is_put_back_whole_into_either_kind_of_store() {
    let ([a, b], [c, d]) = (both(), both());
    for (from, to) in [(&a, &d), (&b, &c)] {
        let (place, other) = (&from.0, &to.0);
        wait(async {
            let desk = Desk::open(place).await.expect("opens");
            published(&desk, "2026.11.1").await;
            published(&desk, "2026.11.2").await;
            desk.hold_back("mini", &asked(HeldKind::Material, "garden-oil"), "ana", None).await.expect("held back");
            let mut file = Vec::new();
            let mut work = desk.store.read().await.expect("reads");
            let rows = backup::write(&mut *work, &mut file, now_ms()).await.expect("written");
            let kept = releases::after(&mut *work, 0).await.expect("read");
            drop(work);
            assert!(rows > 10);
            let mut work = desk.store.begin().await.expect("writes");
            let full = backup::restore(&mut *work, file.as_slice()).await;
            assert!(full.is_err_and(|error| error.to_string().contains("not empty")));
            drop(work);

            // Into an empty store of the other kind.
            let empty = Desk::open(other).await.expect("opens");
            for at in [file.len() / 3, file.len() / 2, file.len() - 3] {
                let mut bad = file.clone();
                bad[at] ^= 1;
                for part in [bad.as_slice(), &file[..at]] {
                    let mut trial = empty.store.begin().await.expect("writes");
                    let error = backup::restore(&mut *trial, part).await.expect_err("refused");
                    assert!(matches!(error, StoreError::Damaged(_)), "byte {at}: {error}");
                }
            }
            let mut work = empty.store.begin().await.expect("writes");
            assert_eq!(backup::restore(&mut *work, file.as_slice()).await.expect("put back"), rows);
            assert_eq!(releases::after(&mut *work, 0).await.expect("read"), kept);
            work.commit().await.expect("kept");
            for release in &kept {
                let mut work = empty.store.read().await.expect("reads");
                let document = documents::get(&mut *work, &release.document).await.expect("its files");
                node::tested(release, &document.files().expect("files"), &[], &desk.keyring).expect("it passes");
            }
            let mut again = Vec::new();
            let mut work = empty.store.read().await.expect("reads");
            assert_eq!(backup::write(&mut *work, &mut again, now_ms()).await.expect("written"), rows);
        });
    }
}

#[test]
fn a_copy_counts_only_whole_signed_and_young() {
    let [(place, folder), _] = both();
    wait(async {
        let desk = Desk::open(&place).await.expect("opens");
        let release = published(&desk, "2026.11.1").await;
        let mut work = desk.store.read().await.expect("reads");
        let document = documents::get(&mut *work, &release.document).await.expect("its files");
        let path = folder.path().join("copy.json");
        let whole = [copy::Copied { release: release.clone(), document }];
        copy::write(&path, &whole, 1_000).expect("written");
        let read = |now: i64| copy::read(&path, &desk.keyring, 30, now);
        assert_eq!(read(2_000).expect("it counts")[0].release, release);
        assert_eq!(read(31 * 86_400_000).expect_err("old"), "it is older than 30 days");
        let bytes = std::fs::read(&path).expect("read");
        // A thousand single bytes, all over the file.
        for round in 0..1_000_usize {
            let mut bad = bytes.clone();
            let at = round * 7_919 % bytes.len();
            bad[at] ^= 1 << (round % 7);
            std::fs::write(&path, &bad).expect("written");
            assert!(read(2_000).is_err(), "byte {at}");
        }
        let stripped = Release { signature: String::new(), ..release.clone() };
        copy::write(&path, &[copy::Copied { release: stripped, ..whole[0].clone() }], 1_000).expect("written");
        assert!(read(2_000).expect_err("unsigned").contains("the signature is not one"));
        let edited = Release { version: "2026.11.9".to_owned(), ..release.clone() };
        assert!(statement::verify(&edited, &desk.keyring).is_err());
        let other = lammas::publishing::signing::Keyring::of([9; 32]);
        assert!(statement::verify(&release, &other).is_err_and(|why| why.contains("not in `trusted.keys`")));
    });
}
