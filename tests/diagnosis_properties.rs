//! What must hold for every case, whatever it says.

mod diagnosis_support;

use coquille::reckoning::diagnosis::*;
use diagnosis_support::{Numbers, Size, any_case, own_looks};
use proptest::prelude::*;

const SMALL: Size = Size { causes: 7, probes: 7, jobs: 4 };

fn ready(case: Case) -> Diagnosis {
    Diagnosis::of(case).expect("checked when it was made")
}

fn any(seed: u64, size: Size) -> Case {
    any_case(&mut Numbers(seed), size)
}

/// Whether no run ends in a group.
fn known_everywhere(node: &Node) -> bool {
    match node {
        Node::Ending(ending) => ending.kind != EndingKind::Group,
        Node::Decision(decision) => decision.branches.iter().all(|branch| known_everywhere(&branch.node)),
    }
}

/// Every path's minutes add up: what is spent, what closing costs, and nothing twice.
fn adds_up(ready: &Diagnosis, node: &Node, spent: u64, open: &[JobIndex]) {
    let case = ready.case();
    let close = |jobs: &[JobIndex]| jobs.iter().map(|job| case.jobs[job.0].close.0).sum::<u64>();
    match node {
        Node::Ending(ending) => {
            assert_eq!((ending.so_far.0, ending.closing_up.0), (spent, close(open)));
            assert!(ending.close.iter().rev().eq(open), "closed in reverse order");
        }
        Node::Decision(decision) => {
            assert_eq!((decision.so_far.0, decision.closing_up.0), (spent, close(open)));
            assert_eq!(decision.open, open);
            let mut now: Vec<JobIndex> =
                open.iter().copied().filter(|job| !decision.shut_first.contains(job)).collect();
            for job in &decision.newly_opened {
                assert!(!now.contains(job), "opened while it is open");
                assert!(
                    case.jobs[job.0].needs.iter().all(|needed| now.contains(needed)),
                    "opened before what it needs"
                );
                now.push(*job);
            }
            let opening: u64 = decision.newly_opened.iter().map(|job| case.jobs[job.0].open.0).sum();
            let spent = spent + close(&decision.shut_first) + opening + case.probes[decision.probe.0].minutes.0;
            for branch in &decision.branches {
                adds_up(ready, &branch.node, spent, &now);
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_order_beats_the_exact_tree(seed: u64) {
        let ready = ready(any(seed, SMALL));
        let tree = ready.quickest_tree(Limits::default());
        let order = ready.quickest_order(Limits::default());
        prop_assert_eq!(tree.gap, 0.0);
        prop_assert!(tree.expected <= order.priced.expected);
        prop_assert!(order.at_least <= order.priced.expected);
        prop_assert!(order.priced.breaks.is_empty());
        prop_assert!(order.priced.expected <= ready.as_written_tree().expected);
    }

    #[test]
    fn a_stopped_search_keeps_its_promise(seed: u64, states in 0usize..12) {
        let ready = ready(any(seed, SMALL));
        let exact = ready.quickest_tree(Limits::default());
        let stopped = ready.quickest_tree(Limits { states });
        prop_assert!(stopped.at_least <= exact.expected, "the bound is never above the optimum");
        prop_assert!(exact.expected <= stopped.expected);
        prop_assert!(stopped.states <= states);
        if stopped.gap == 0.0 {
            prop_assert_eq!(stopped.expected, exact.expected);
        }
    }

    #[test]
    fn the_search_says_the_same_twice(seed: u64) {
        let case = any(seed, SMALL);
        let tree = || ready(case.clone()).quickest_tree(Limits::default());
        prop_assert_eq!(tree(), tree());
    }

    /// Two probes more can leave groups that were parted by nothing before: so the remedy must have been known at every end.
    #[test]
    fn more_probes_never_hurt_where_the_remedy_is_known_anyway(seed: u64) {
        let mut case = any(seed, SMALL);
        case.probes.iter_mut().for_each(|probe| probe.after.clear());
        let all = ready(case.clone());
        let Some(last) = case.probes.pop() else { return Ok(()) };
        let fewer = ready(case);
        let tree = fewer.quickest_tree(Limits::default());
        prop_assume!(known_everywhere(&tree.root));
        prop_assert!(all.quickest_tree(Limits::default()).expected <= tree.expected, "without {last:?}");
    }

    #[test]
    fn scaling_all_shares_changes_nothing(seed: u64, times in 1u32..50) {
        let case = any(seed, SMALL);
        let mut scaled = case.clone();
        scaled.causes.iter_mut().for_each(|cause| cause.weight.0 *= times);
        scaled.rest.iter_mut().for_each(|rest| rest.weight.0 *= times);
        let (one, other) = (ready(case), ready(scaled));
        prop_assert_eq!(one.quickest_tree(Limits::default()), other.quickest_tree(Limits::default()));
        prop_assert_eq!(one.as_written_tree(), other.as_written_tree());
    }

    #[test]
    fn minutes_add_up_on_every_path_and_closing_is_paid_once(seed: u64) {
        let ready = ready(any(seed, SMALL));
        adds_up(&ready, &ready.as_written_tree().root, 0, &[]);
        adds_up(&ready, &ready.quickest_tree(Limits::default()).root, 0, &[]);
    }

    #[test]
    fn the_ratio_rule_is_exact_for_looks_at_single_causes(seed: u64, complete: bool) {
        let ready = ready(own_looks(seed, 0, complete));
        let order = ready.quickest_order(Limits::default());
        prop_assert_eq!(order.priced.expected, ready.quickest_tree(Limits::default()).expected);
        prop_assert!(order.found_by == FoundBy::Ratio || ready.case().causes.len() == 2);
    }

    #[test]
    fn the_cluster_rule_is_exact_behind_nested_jobs(seed: u64, complete: bool, jobs in 1usize..5) {
        let ready = ready(own_looks(seed, jobs, complete));
        let order = ready.quickest_order(Limits::default());
        prop_assert_eq!(order.priced.expected, ready.quickest_tree(Limits::default()).expected);
    }

    #[test]
    fn a_share_set_to_what_it_is_changes_nothing(seed: u64) {
        let ready = ready(any(seed, SMALL));
        for (suspect, share) in ready.belief().possible {
            if let Some(same) = ready.with_share(suspect, share) {
                prop_assert_eq!(same.belief(), ready.belief());
                prop_assert_eq!(same.quickest_tree(Limits::default()), ready.quickest_tree(Limits::default()));
            }
        }
    }

    #[test]
    fn another_first_probe_is_really_first_at_the_step_that_is_named(seed: u64) {
        let ready = ready(any(seed, Size { causes: 4, probes: 4, jobs: 2 }));
        for found in ready.sensitivity().unwrap_or_default() {
            for (share, probe) in found.below.into_iter().chain(found.above) {
                let moved = ready.with_share(found.suspect, share).expect("it was tried before");
                let Node::Decision(first) = moved.quickest_tree(Limits::default()).root else { panic!("a first probe") };
                prop_assert_eq!(first.probe, probe);
            }
        }
    }

    #[test]
    fn nothing_that_is_said_makes_it_panic(seed: u64, wild in 0usize..12) {
        let mut numbers = Numbers(seed);
        let mut case = any(seed, SMALL);
        let far = 3 + numbers.below(400);
        match (wild, case.probes.first_mut(), case.jobs.first_mut()) {
            (0, Some(probe), _) => probe.after.push(ProbeIndex(0)),
            (1, Some(probe), _) => probe.answers.clear(),
            (2, Some(probe), _) => probe.otherwise = AnswerIndex(far),
            (3, Some(probe), _) => probe.minutes = Minutes(u64::MAX),
            (4, Some(probe), _) => probe.needs.push(JobIndex(far)),
            (5, _, Some(job)) => job.needs.push(JobIndex(0)),
            (6, _, Some(job)) => job.close = Minutes(u64::MAX),
            (7, ..) => case.causes = vec![Cause { weight: Weight(u32::MAX), remedy: RemedyIndex(0) }; far],
            (8, Some(probe), _) => probe.works_now = Some(AnswerIndex(far)),
            (9, Some(probe), _) => probe.answers[0].named.push(Named { suspect: Suspect::Rest, parts: u32::MAX }),
            (10, Some(probe), _) => probe.shut = probe.needs.clone(),
            _ => case.remedies.iter_mut().for_each(|remedy| remedy.minutes = Minutes(u64::MAX)),
        }
        if let Ok(ready) = Diagnosis::of(case) {
            let tree = ready.quickest_tree(Limits { states: 200 });
            ready.price(&[ProbeIndex(far), ProbeIndex(0), ProbeIndex(0)]);
            ready.quickest_order(Limits { states: 200 });
            ready.only_dead_ends(&tree);
            ready.groups();
        }
    }
}

/// Shares 90 and 10, looks of 10 and 2 minutes, nothing else possible: the rule alone would cost 10 minutes.
#[test]
fn a_complete_list_needs_no_look_at_its_last_cause() {
    let mut case = own_looks(0, 0, true);
    case.causes = vec![
        Cause { weight: Weight(90), remedy: RemedyIndex(0) },
        Cause { weight: Weight(10), remedy: RemedyIndex(1) },
    ];
    case.remedies = vec![Remedy::default(); 2];
    case.probes.truncate(2);
    (case.probes[0].minutes, case.probes[1].minutes) = (Minutes::whole(10), Minutes::whole(2));
    assert_eq!(ready(case).quickest_order(Limits::default()).priced.expected, Fraction::new(2, 1));
}

/// As much of everything as a case may hold, with answers that anybody may give.
#[test]
fn the_largest_case_comes_to_an_end() {
    let mut numbers = Numbers(5);
    let mut case = Case { remedies: vec![Remedy::default(); most::CAUSES], ..Case::default() };
    case.causes = (0..most::CAUSES).map(|i| Cause { weight: Weight(1 + i as u32), remedy: RemedyIndex(i) }).collect();
    for _ in 0..most::PROBES {
        let mut answers = vec![Answer::default(); most::ANSWERS];
        for (cause, answer) in (0..most::CAUSES).flat_map(|cause| [(cause, numbers.below(60)), (cause, 63)]) {
            answers[answer].named.push(Named::cause(cause));
        }
        case.probes.push(Probe {
            minutes: Minutes(1 + numbers.below(100) as u64),
            needs: Vec::new(),
            shut: Vec::new(),
            after: Vec::new(),
            answers,
            otherwise: AnswerIndex(62),
            works_now: None,
        });
    }
    let ready = ready(case);
    assert!(!ready.approximated().is_empty(), "so many ways to behave do not fit");
    let tree = ready.quickest_tree(Limits { states: 200 });
    assert!(tree.at_least <= tree.expected && tree.gap == 1.0);
}
