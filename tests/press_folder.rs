//! What a bind does to a folder and to what people keep in it, both ways.

#![allow(clippy::unwrap_used, reason = "in a test's own small functions a panic is the report, as in the tests")]

use coquille::press::{Address, CONTENTS, Contents, Manner, Pressed, Recovered, Strangers};
use coquille::press::{PressFailed, Way, Why, press, recover, stands_inside, system};
use proptest::prelude::*;
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use tempfile::TempDir;

const WAYS: [Way; 2] = [Way::Exchange, Way::Journal];

type Tree = BTreeMap<String, Vec<u8>>;

/// A folder for a handbook, and a folder beside which no bind may enter.
struct Bench {
    folder: TempDir,
    manner: Manner,
}

impl Bench {
    fn new(way: Way) -> Bench {
        let strangers = Strangers::Refuse;
        Bench { folder: tempfile::tempdir().unwrap(), manner: Manner { way, strangers } }
    }

    fn out(&self) -> PathBuf {
        self.folder.path().join("site")
    }

    fn beside(&self) -> PathBuf {
        self.folder.path().join(".site.binding")
    }

    fn press(&self, files: &[(&str, &str)]) -> Result<Pressed, PressFailed> {
        press(&self.out(), &handbook(files), self.manner, &())
    }

    fn force(&self, files: &[(&str, &str)]) -> Pressed {
        let strangers = Strangers::Keep;
        let manner = Manner { strangers, ..self.manner };
        press(&self.out(), &handbook(files), manner, &()).unwrap()
    }

    fn put(&self, name: &str, text: &str) {
        let path = self.out().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }

    fn get(&self, name: &str) -> String {
        fs::read_to_string(self.out().join(name)).unwrap()
    }

    fn has(&self, name: &str) -> bool {
        fs::symlink_metadata(self.out().join(name)).is_ok()
    }

    fn tree(&self) -> Tree {
        tree(&self.out())
    }
}

fn handbook(files: &[(&str, &str)]) -> BTreeMap<Address, Vec<u8>> {
    let file = |(address, text): &(&str, &str)| {
        let address = Address::parse(address).unwrap();
        (address, text.as_bytes().to_vec())
    };
    files.iter().map(file).collect()
}

fn tree(out: &Path) -> Tree {
    let entries = walkdir::WalkDir::new(out).into_iter().map(Result::unwrap);
    let files = entries.filter(|entry| !entry.file_type().is_dir());
    files
        .map(|entry| {
            let name = entry.path().strip_prefix(out).unwrap().to_str().unwrap();
            (name.to_owned(), fs::read(entry.path()).unwrap_or_default())
        })
        .collect()
}

#[test]
fn the_first_bind_makes_the_folder_and_leaves_nothing_beside() {
    for way in WAYS {
        let bench = Bench::new(way);
        let pressed = bench.press(&[("index.html", "1"), ("a/b.html", "2")]).unwrap();
        assert_eq!((pressed.added, pressed.way), (2, None));
        assert_eq!(bench.get("a/b.html"), "2");
        let beside: Vec<_> = fs::read_dir(bench.folder.path()).unwrap().collect();
        assert_eq!(beside.len(), 1);
    }
}

#[test]
fn folders_above_are_made_too() {
    let bench = Bench::new(Way::Exchange);
    let out = bench.folder.path().join("club/2026/site");
    press(&out, &handbook(&[("index.html", "1")]), bench.manner, &()).unwrap();
    assert!(out.join("index.html").is_file());
}

#[test]
fn an_empty_folder_and_one_with_the_systems_litter_are_welcome() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.put(".DS_Store", "litter");
        let pressed = bench.press(&[("index.html", "1")]).unwrap();
        assert_eq!(pressed.kept, Vec::<PathBuf>::new());
        assert!(bench.has(".DS_Store") && bench.has("index.html"));
        // A handbook of no page at all is still ours.
        assert_eq!(bench.press(&[]).unwrap().removed, 1);
        assert_eq!(bench.press(&[("index.html", "1")]).unwrap().added, 1);
    }
}

#[cfg(unix)]
#[test]
fn only_what_changed_is_written_again() {
    use std::os::unix::fs::MetadataExt;
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a", "1"), ("b", "1"), ("c", "1")]).unwrap();
        let inode = |name: &str| fs::metadata(bench.out().join(name)).unwrap().ino();
        let (a, b) = (inode("a"), inode("b"));
        let pressed = bench.press(&[("a", "1"), ("b", "2"), ("d", "1")]).unwrap();
        let counts = (pressed.same, pressed.changed, pressed.added, pressed.removed);
        assert_eq!(counts, (1, 1, 1, 1));
        assert_eq!((pressed.way, inode("a")), (Some(way), a));
        assert_ne!(inode("b"), b);
        assert!(!bench.has("c") && !bench.beside().exists());
        assert_eq!(fs::metadata(bench.out().join("a")).unwrap().nlink(), 1);
    }
}

#[cfg(unix)]
#[test]
fn the_same_handbook_again_touches_nothing_not_even_the_folder() {
    use std::os::unix::fs::MetadataExt;
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a/b", "1")]).unwrap();
        let before = fs::metadata(bench.out()).unwrap();
        let pressed = bench.press(&[("a/b", "1")]).unwrap();
        let after = fs::metadata(bench.out()).unwrap();
        assert_eq!((pressed.same, pressed.way), (1, None));
        assert_eq!(before.ino(), after.ino());
        assert_eq!(before.modified().unwrap(), after.modified().unwrap());
    }
}

#[cfg(unix)]
#[test]
fn the_folders_permissions_stay_as_people_set_them() {
    use std::os::unix::fs::PermissionsExt;
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a", "1")]).unwrap();
        fs::set_permissions(bench.out(), fs::Permissions::from_mode(0o2770)).unwrap();
        bench.press(&[("a", "2")]).unwrap();
        let mode = fs::metadata(bench.out()).unwrap().permissions().mode();
        assert_eq!(mode & 0o7777, 0o2770);
    }
}

#[test]
fn what_people_put_there_stays_and_is_named_a_folder_once() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("pages/a.html", "1")]).unwrap();
        bench.put("notes.txt", "mine");
        bench.put("pages/mine.txt", "mine");
        bench.put("photos/x/1.jpg", "mine");
        bench.put("photos/x/2.jpg", "mine");
        fs::create_dir(bench.out().join("empty")).unwrap();
        let pressed = bench.press(&[("pages/b.html", "2")]).unwrap();
        let named = ["empty", "notes.txt", "pages/mine.txt", "photos"];
        assert_eq!(pressed.kept, named.map(PathBuf::from));
        assert_eq!(bench.get("photos/x/2.jpg"), "mine");
        assert!(bench.has("empty") && !bench.has("pages/a.html"));
    }
}

#[test]
fn a_folder_that_was_not_ours_is_refused_and_untouched() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.put("index.html", "the club's old pages");
        let before = bench.tree();
        let failed = bench.press(&[("index.html", "1")]).unwrap_err();
        let holds = vec![PathBuf::from("index.html")];
        assert_eq!(failed.why, Why::NotOurs { holds });
        assert_eq!(bench.tree(), before);
        assert!(!bench.beside().exists());
    }
}

#[test]
fn forced_into_a_strangers_folder_nothing_of_theirs_is_lost() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.put("index.html", "theirs");
        bench.put("index.html.kept", "theirs too");
        bench.put("equal.html", "equal");
        bench.put("words/notes.txt", "theirs as well");
        let files = [("index.html", "1"), ("equal.html", "equal"), ("words", "w")];
        let pressed = bench.force(&files);
        assert_eq!(pressed.way, Some(way));
        assert_eq!(bench.get("index.html"), "1");
        assert_eq!(bench.get("index.html.kept"), "theirs too");
        assert_eq!(bench.get("index.html.kept-2"), "theirs");
        assert_eq!(bench.get("words.kept/notes.txt"), "theirs as well");
        assert_eq!(pressed.set_aside.len(), 2);
        // From now on the folder is ours, and they are known as theirs.
        let again = bench.press(&files).unwrap();
        let named = ["index.html.kept", "index.html.kept-2", "words.kept"];
        assert_eq!(again.kept, named.map(PathBuf::from));
    }
}

#[test]
fn a_strangers_file_at_a_new_pages_address_is_never_overwritten() {
    for way in WAYS {
        for (theirs, page) in [("new.html", "new.html"), ("tip", "tip/a"), ("NEW.html", "new.html")] {
            let bench = Bench::new(way);
            bench.press(&[("index.html", "1")]).unwrap();
            bench.put(theirs, "theirs");
            let before = bench.tree();
            let failed = bench.press(&[("index.html", "2"), (page, "ours")]).unwrap_err();
            let strangers = vec![PathBuf::from(theirs)];
            assert_eq!(failed.why, Why::InTheWay { strangers });
            assert_eq!(bench.tree(), before);
            bench.force(&[("index.html", "2"), (page, "ours")]);
            assert_eq!(bench.get(page), "ours");
            assert_eq!(bench.get(&format!("{theirs}.kept")), "theirs");
        }
    }
}

#[cfg(unix)]
#[test]
fn a_link_in_the_folder_is_never_followed_out_of_it() {
    use std::os::unix::fs::symlink;
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("words/arc.html", "1"), ("index.html", "1")]).unwrap();
        let elsewhere = tempfile::tempdir().unwrap();
        fs::write(elsewhere.path().join("arc.html"), "1").unwrap();
        fs::write(elsewhere.path().join("private.txt"), "private").unwrap();
        fs::remove_dir_all(bench.out().join("words")).unwrap();
        symlink(elsewhere.path(), bench.out().join("words")).unwrap();
        symlink(elsewhere.path().join("private.txt"), bench.out().join("note")).unwrap();
        let files = [("words/arc.html", "2"), ("index.html", "1")];
        let strangers = vec![PathBuf::from("words")];
        let failed = bench.press(&files).unwrap_err();
        assert_eq!(failed.why, Why::InTheWay { strangers });
        bench.force(&files);
        // Dropping the page must not reach through the link either.
        bench.press(&[("index.html", "1")]).unwrap();
        assert_eq!(fs::read_to_string(elsewhere.path().join("arc.html")).unwrap(), "1");
        assert_eq!(tree(elsewhere.path()).len(), 2);
        let is_link = |name: &str| bench.out().join(name).symlink_metadata().unwrap().is_symlink();
        assert!(is_link("words.kept") && is_link("note"));
    }
}

#[test]
fn a_page_that_somebody_edited_is_written_anew_and_kept_once_it_is_no_page_any_more() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a", "1"), ("b", "1")]).unwrap();
        bench.put("a", "scribbled on");
        fs::remove_file(bench.out().join("b")).unwrap();
        let pressed = bench.press(&[("a", "1"), ("b", "1")]).unwrap();
        let restored: Vec<_> = pressed.restored.iter().map(Address::as_str).collect();
        assert_eq!(restored, ["a", "b"]);
        assert_eq!((bench.get("a"), bench.get("b")), ("1".into(), "1".into()));
        bench.put("a", "scribbled on again");
        let pressed = bench.press(&[("b", "1")]).unwrap();
        assert_eq!((pressed.removed, pressed.kept), (0, vec![PathBuf::from("a")]));
        assert_eq!(bench.get("a"), "scribbled on again");
    }
}

#[test]
fn a_page_may_become_a_folder_and_a_folder_a_page_and_a_name_change_its_case() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a", "1"), ("b/c", "1"), ("Foil.html", "1")]).unwrap();
        bench.press(&[("a/x", "2"), ("b", "2"), ("foil.html", "2")]).unwrap();
        let names: Vec<_> = bench.tree().into_keys().collect();
        assert_eq!(names, ["a/x", "b", "foil.html", CONTENTS]);
    }
}

#[test]
fn a_damaged_list_of_contents_is_refused_and_force_loses_nothing() {
    for way in WAYS {
        let bench = Bench::new(way);
        bench.press(&[("a", "1"), ("b", "1")]).unwrap();
        bench.put(CONTENTS, "scribble");
        let failed = bench.press(&[("a", "2")]).unwrap_err();
        assert_eq!(failed.why, Why::DamagedContents);
        bench.force(&[("a", "2")]);
        assert_eq!((bench.get("a"), bench.get("a.kept")), ("2".into(), "1".into()));
        assert_eq!(bench.get("b"), "1");
        bench.press(&[("a", "3")]).unwrap();
    }
}

#[test]
fn a_file_a_link_and_the_root_are_no_folder_for_a_handbook() {
    let bench = Bench::new(Way::Exchange);
    fs::write(bench.out(), "a file").unwrap();
    assert_eq!(bench.press(&[("a", "1")]).unwrap_err().why, Why::OutIsFile);
    fs::remove_file(bench.out()).unwrap();
    let files = handbook(&[("a", "1")]);
    let root = press(Path::new("/"), &files, bench.manner, &()).unwrap_err();
    assert_eq!(root.why, Why::NoName);
    #[cfg(unix)]
    {
        let elsewhere = tempfile::tempdir().unwrap();
        std::os::unix::fs::symlink(elsewhere.path(), bench.out()).unwrap();
        assert_eq!(bench.press(&[("a", "1")]).unwrap_err().why, Why::OutIsLink);
        assert!(tree(elsewhere.path()).is_empty());
    }
}

#[test]
fn pages_that_some_system_cannot_hold_side_by_side_are_refused() {
    let bench = Bench::new(Way::Exchange);
    for files in [[("Foil", "1"), ("foil", "1")], [("a", "1"), ("Handbook.Contents", "1")]] {
        let failed = bench.press(&files).unwrap_err();
        assert!(matches!(failed.why, Why::Clash(_)), "{failed}");
    }
    assert!(!bench.out().exists());
}

#[test]
fn a_second_run_at_once_is_refused_and_a_look_does_not_disturb_the_first() {
    let bench = Bench::new(Way::Exchange);
    bench.press(&[("a", "1")]).unwrap();
    fs::create_dir(bench.beside()).unwrap();
    let lock = system::Claim::take(&bench.beside().join("lock")).unwrap();
    assert_eq!(bench.press(&[("a", "2")]).unwrap_err().why, Why::Busy);
    assert_eq!(recover(&bench.out()).unwrap(), Recovered::AtWork);
    drop(lock);
    // Its holder died: the next run takes over.
    let pressed = bench.press(&[("a", "2")]).unwrap();
    assert_eq!(pressed.recovered, Recovered::Cleared);
    assert!(!bench.beside().exists());
}

#[test]
fn somebody_elses_folder_of_our_hidden_name_is_refused_and_untouched() {
    let bench = Bench::new(Way::Exchange);
    fs::create_dir(bench.beside()).unwrap();
    fs::write(bench.beside().join("diary.txt"), "mine").unwrap();
    assert_eq!(bench.press(&[("a", "1")]).unwrap_err().why, Why::Leftovers);
    assert_eq!(recover(&bench.out()).unwrap_err().why, Why::Leftovers);
    assert_eq!(tree(&bench.beside()).len(), 1);
}

#[test]
fn what_came_into_the_old_folder_while_binding_is_brought_over() {
    let bench = Bench::new(Way::Exchange);
    bench.press(&[("a", "2")]).unwrap();
    bench.put("draft.txt", "early");
    // As a kill right after the exchange leaves it: the old folder beside, with its list.
    let old = bench.beside().join("whole");
    fs::create_dir_all(old.join("photos")).unwrap();
    fs::write(bench.beside().join("lock"), "").unwrap();
    let files = handbook(&[("a", "1"), ("gone", "1")]);
    for (address, bytes) in &files {
        fs::write(address.within(&old), bytes).unwrap();
    }
    fs::write(old.join(CONTENTS), Contents::of(&files).to_text()).unwrap();
    fs::write(old.join("photos/tip.jpg"), "came late").unwrap();
    fs::write(old.join("draft.txt"), "saved late").unwrap();
    assert_eq!(recover(&bench.out()).unwrap(), Recovered::Cleared);
    assert_eq!((bench.get("a"), bench.has("gone")), ("2".into(), false));
    assert_eq!(bench.get("photos/tip.jpg"), "came late");
    assert_eq!(bench.get("draft.txt"), "saved late");
    assert!(!bench.beside().exists());
}

#[test]
fn without_leftovers_recovering_does_not_even_need_the_folder() {
    let bench = Bench::new(Way::Exchange);
    assert_eq!(recover(&bench.out()).unwrap(), Recovered::Nothing);
    assert!(!bench.out().exists() && !bench.beside().exists());
}

#[derive(Default)]
struct Count {
    begun: AtomicUsize,
    steps: AtomicUsize,
}

impl coquille::press::Progress for Count {
    fn begin(&self, files: usize) {
        self.begun.fetch_add(files, Ordering::Relaxed);
    }
    fn step(&self) {
        self.steps.fetch_add(1, Ordering::Relaxed);
    }
}

#[test]
fn progress_takes_as_many_steps_as_it_said_it_would() {
    for way in WAYS {
        let bench = Bench::new(way);
        for files in [[("a", "1"), ("b", "1")], [("a", "1"), ("b", "2")], [("a", "1"), ("b", "2")]] {
            let count = Count::default();
            press(&bench.out(), &handbook(&files), bench.manner, &count).unwrap();
            assert_eq!(count.begun.into_inner(), 3, "two pages and the list");
            assert_eq!(count.steps.into_inner(), 3);
        }
    }
}

#[test]
fn one_thread_and_eight_write_the_same_tree() {
    let pages = |own: char| {
        let page = |n| (format!("{}/{n}.html", n % 9), format!("{own}{}", n % 2 * n));
        (0..200).map(page).collect::<Vec<_>>()
    };
    let pressed = |threads: usize, way: Way| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads);
        pool.build().unwrap().install(|| {
            let bench = Bench::new(way);
            let reports = ['a', 'b'].map(|own| {
                let pages = pages(own);
                let pages: Vec<_> = pages.iter().map(|(a, t)| (a.as_str(), t.as_str())).collect();
                bench.press(&pages).unwrap()
            });
            (bench.tree(), reports.map(|report| (report.same, report.changed)))
        })
    };
    let one = pressed(1, Way::Exchange);
    assert_eq!(one.0.len(), 201);
    assert_eq!(one, pressed(8, Way::Exchange));
    assert_eq!(one, pressed(8, Way::Journal));
}

#[test]
fn a_folder_stands_inside_itself_and_what_only_begins_like_it_does_not() {
    let inside = |a: &str, b: &str| stands_inside(Path::new(a), Path::new(b));
    assert!(inside("/club/guides/site", "/club/guides"));
    assert!(inside("/club/guides", "/club/guides/."));
    assert!(inside("/club/site/../guides/x", "/club/guides"));
    assert!(!inside("/club/guides-site", "/club/guides"));
    assert!(!inside("/club/guides/../site", "/club/guides"));
    assert!(!inside("/club", "/club/guides"));
}

/// A handbook of a few short files, some of which differ in case or stand in each other's way between two handbooks.
fn some_files() -> impl Strategy<Value = Tree> {
    let name = "[abB]{1}(/[ab]{1}){0,2}";
    prop::collection::btree_map(name, prop::collection::vec(0u8..3, 0..2), 0..6)
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 60,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn after_any_history_the_folder_holds_the_last_handbook_and_every_strangers_bytes(
        history in prop::collection::vec((some_files(), some_files()), 1..4)
    ) {
        let mut ends = Vec::new();
        for way in WAYS {
            let bench = Bench::new(way);
            let manner = Manner { way, strangers: Strangers::Keep };
            let mut theirs = 0;
            for (number, (files, strangers)) in history.iter().enumerate() {
                let files: BTreeMap<_, _> = files.iter()
                    .map(|(name, bytes)| (Address::parse(name).unwrap(), bytes.clone()))
                    .collect();
                let pressed = press(&bench.out(), &files, manner, &());
                if coquille::press::clash(files.keys()).is_some() {
                    prop_assert!(pressed.is_err());
                    continue;
                }
                pressed.unwrap();
                let tree = bench.tree();
                for (address, bytes) in &files {
                    prop_assert_eq!(&tree[address.as_str()], bytes);
                }
                prop_assert_eq!(tree.len(), files.len() + 1 + theirs);
                prop_assert!(!bench.beside().exists());
                // Somebody puts in files of their own, wherever there is room for one.
                for name in strangers.keys() {
                    let path = bench.out().join(name);
                    let made = fs::create_dir_all(path.parent().unwrap()).is_ok();
                    if made && !path.exists() {
                        fs::write(path, format!("theirs, {number}")).unwrap();
                        theirs += 1;
                    }
                }
            }
            ends.push(bench.out().exists().then(|| bench.tree()));
        }
        prop_assert_eq!(&ends[0], &ends[1]);
    }
}
