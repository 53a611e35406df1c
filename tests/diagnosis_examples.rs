//! Examples with published answers, each with its source. Figures are expected minutes, exactly.

use coquille::reckoning::diagnosis::*;

/// A probe of whole minutes whose answers (but the last, the unremarkable one) name these causes.
fn look(minutes: u32, named: &[&[usize]]) -> Probe {
    let mut answers: Vec<Answer> =
        named.iter().map(|causes| Answer { named: causes.iter().map(|c| Named::cause(*c)).collect() }).collect();
    answers.push(Answer::default());
    Probe {
        minutes: Minutes::whole(minutes),
        needs: Vec::new(),
        shut: Vec::new(),
        after: Vec::new(),
        otherwise: AnswerIndex(named.len()),
        answers,
        works_now: None,
    }
}

/// A trial fix that mends these causes.
fn trial(minutes: u32, mends: &[usize]) -> Probe {
    Probe { works_now: Some(AnswerIndex(0)), ..look(minutes, &[mends]) }
}

/// Causes of these weights, each with a remedy of its own that takes a minute.
fn case(weights: &[u32], probes: Vec<Probe>) -> Case {
    let causes = weights.iter().enumerate().map(|(i, w)| Cause { weight: Weight(*w), remedy: RemedyIndex(i) });
    let remedy = Remedy { minutes: Minutes::whole(1), needs: Vec::new() };
    Case { causes: causes.collect(), remedies: vec![remedy; weights.len()], probes, ..Case::default() }
}

fn ready(case: Case) -> Diagnosis {
    Diagnosis::of(case).expect("the example is sound")
}

fn order(places: &[usize]) -> Vec<ProbeIndex> {
    places.iter().copied().map(ProbeIndex).collect()
}

/// Pattipati & Alexandridis, IEEE Trans. Systems, Man and Cybernetics 20(4), 1990, 872–887: six states, five tests of unit cost. Inputs as
/// remembered; the published optimum 2.18 comes out.
#[test]
fn six_states_and_five_tests_cost_two_point_one_eight() {
    let tests: [&[usize]; 5] = [&[3, 4, 5], &[1, 4, 5], &[2, 5], &[2, 3, 5], &[1, 3]];
    let probes = tests.iter().map(|test| look(1, &[test])).collect();
    let tree = ready(case(&[70, 1, 2, 10, 5, 12], probes)).quickest_tree(Limits::default());
    assert_eq!(tree.expected.to_string(), "109/50");
    assert_eq!((tree.gap, tree.at_least), (0.0, tree.expected));
}

/// Huffman, Proc. IRE 40(9), 1952: with every binary test at unit cost the best tree is the best code. Frequencies 45 13 12 16 9 5 of a
/// well-known algorithms textbook: 2.24.
#[test]
fn all_binary_tests_at_unit_cost_give_the_huffman_code() {
    let subsets = (1..32usize).map(|mask| (0..5).filter(|i| mask >> i & 1 == 1).collect::<Vec<_>>());
    let probes = subsets.map(|subset| look(1, &[&subset])).collect();
    let tree = ready(case(&[45, 13, 12, 16, 9, 5], probes)).quickest_tree(Limits::default());
    assert_eq!(tree.expected.to_string(), "56/25");
}

/// Jensen et al., *The SACSO methodology*, AI EDAM 15, 2001, section 2.2: overlapping mending actions, shares 20 25 40 15, unit costs. There the
/// mending action always counts: ours is *to working again*, each cause with an action of one minute as remedy.
#[test]
fn overlapping_trial_fixes_cost_one_point_four_five_at_best() {
    let mut case = case(&[20, 25, 40, 15], vec![trial(1, &[0, 1]), trial(1, &[1, 2]), trial(1, &[2, 3])]);
    case.causes[1].remedy = RemedyIndex(0);
    case.causes[2].remedy = RemedyIndex(3);
    let ready = ready(case);
    let cost = |places: &[usize]| ready.price(&order(places)).to_working_again;
    assert_eq!(cost(&[1, 0, 2]).to_string(), "3/2");
    assert_eq!(cost(&[2, 0]).to_string(), "29/20");
    let all = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
    assert_eq!(all.iter().map(|places| cost(places)).min(), Some(Fraction::new(29, 20)));
}

/// Lin, Int. J. Approximate Reasoning 55, 2014, figure 2: shares 1/2 1/4 1/4, a mending action, a question, a mending action: 2. Without the
/// question 7/4.
#[test]
fn a_given_tree_of_fixes_and_a_question_costs_two() {
    let probes = vec![trial(1, &[0]), look(1, &[&[1]]), trial(1, &[1])];
    let ready = ready(case(&[50, 25, 25], probes));
    assert_eq!(ready.price(&order(&[0, 1, 2])).to_working_again.to_string(), "2");
    assert_eq!(ready.price(&order(&[0, 2, 1])).to_working_again.to_string(), "7/4");
}

/// Ten in a thousand have it, nine in ten of them test positive, nine in a hundred of the others do: 10/109, the usual textbook example of
/// Bayes' rule.
#[test]
fn an_unreliable_probe_updates_by_bayes_rule() {
    let mut probe = look(1, &[&[]]);
    let named = |suspect, parts| Named { suspect, parts };
    let cause = Suspect::Cause(CauseIndex(0));
    probe.answers[0].named = vec![named(cause, 90), named(Suspect::Rest, 9)];
    probe.answers[1].named = vec![named(cause, 10), named(Suspect::Rest, 91)];
    let mut case = case(&[100], vec![probe]);
    case.rest = Some(Rest { weight: Weight(9900), remedy: None });
    let tree = ready(case).as_written_tree();
    let Node::Decision(first) = &tree.root else { panic!("the probe can tell something") };
    let Node::Ending(positive) = &first.branches[0].node else { panic!("one probe, one answer") };
    assert_eq!(positive.belief.possible[0], (cause, Fraction::new(10, 109)));
    assert_eq!(positive.kind, EndingKind::Group, "an unsure answer rules nobody out");
}

/// Looks at a cause each, so long and so likely, and one part in all that none of them finds.
fn looks(minutes_and_weights: &[(u32, u32)]) -> Case {
    let weights: Vec<u32> = minutes_and_weights.iter().map(|(_, weight)| *weight).collect();
    let probes = minutes_and_weights.iter().enumerate().map(|(cause, (minutes, _))| look(*minutes, &[&[cause]]));
    let rest = Some(Rest { weight: Weight(1), remedy: None });
    Case { rest, ..case(&weights, probes.collect()) }
}

/// Smith, Naval Research Logistics Quarterly 3, 1956: least Σ wC of the jobs (6,1) (2,2) (8,4) (3,1) (9,3) is 151, a textbook's figure. A run that finds
/// nothing does all 28 minutes.
#[test]
fn the_ratio_rule_prices_a_textbook_instance() {
    let order = ready(looks(&[(6, 1), (2, 2), (8, 4), (3, 1), (9, 3)])).quickest_order(Limits::default());
    assert_eq!(order.priced.expected, Fraction::new(151 + 28, 12));
    assert_eq!((order.found_by, order.gap), (FoundBy::Ratio, 0.0));
}

/// A textbook instance with precedence: jobs (2,4) (3,3) (4,1), the first and the third before the second: 41.
#[test]
fn precedence_prices_a_textbook_instance() {
    let mut case = looks(&[(2, 4), (3, 3), (4, 1)]);
    case.probes[1].after = order(&[0, 2]);
    let quickest = ready(case).quickest_order(Limits::default());
    assert_eq!(quickest.priced.expected, Fraction::new(41 + 9, 9));
    assert_eq!(quickest.priced.order, order(&[0, 2, 1]));
}

#[test]
fn a_cause_with_five_unsure_probes_is_ruled_out_by_no_single_answer() {
    let mut case = looks(&[(1, 50), (2, 30), (3, 10), (4, 5), (5, 4)]);
    for probe in &mut case.probes {
        probe.answers[1].named.push(Named { suspect: Suspect::Cause(CauseIndex(0)), parts: 2 });
        if probe.answers[0].named[0].suspect != Suspect::Cause(CauseIndex(0)) {
            probe.answers[0].named.push(Named::cause(0));
        }
    }
    let ready = ready(case);
    assert_eq!(ready.approximated(), [(Suspect::Cause(CauseIndex(0)), ProbeIndex(4))]);
    assert_eq!(ready.quickest_tree(Limits::default()).gap, 1.0, "nothing is promised");
    let last_first = ready.tree(Plan::Order(&order(&[4])));
    let Node::Decision(first) = last_first.root else { panic!("it parts the others") };
    for branch in &first.branches {
        let Node::Decision(next) = &branch.node else { panic!("more to find out") };
        assert!(next.belief.possible.iter().any(|(who, _)| *who == Suspect::Cause(CauseIndex(0))));
    }
}

#[test]
fn the_second_probe_that_cannot_be_read_hands_over() {
    let ready = ready(looks(&[(1, 5), (2, 4), (3, 3), (4, 2)]));
    let plan = Plan::Quickest(Limits::default());
    let mut node = ready.tree(plan).root;
    for minutes in [0, 1] {
        let Node::Decision(at) = &node else { panic!("a probe is left") };
        assert_eq!(at.so_far, Minutes::whole(minutes), "what could not be read took its time");
        node = ready.cannot_tell(at, plan);
    }
    let Node::Ending(end) = node else { panic!("two on a path are enough") };
    assert_eq!((end.kind, end.so_far), (EndingKind::HandOver, Minutes::whole(3)));
}

#[test]
fn causes_that_no_probe_parts_are_named_and_so_are_probes_that_tell_nothing() {
    let mut case = looks(&[(1, 5), (2, 4), (3, 3)]);
    case.probes[1] = look(1, &[&[]]);
    let ready = ready(case);
    let who = [Suspect::Cause(CauseIndex(1)), Suspect::Rest];
    assert_eq!(ready.groups(), [Group { suspects: who.to_vec(), one_remedy: None }]);
    assert_eq!(ready.dead_probes(), [ProbeIndex(1)]);
    assert_eq!(ready.only_dead_ends(&ready.as_written_tree()), [CauseIndex(1)]);
}

/// 27 and 20 in a hundred become 40 and what is left of the others in proportion.
#[test]
fn another_share_scales_all_others() {
    let ready = ready(looks(&[(1, 27), (2, 20), (3, 52)]));
    let other = ready.with_share(Suspect::Cause(CauseIndex(0)), Fraction::new(2, 5)).expect("it is a share");
    let shares: Vec<String> = other.belief().possible.iter().map(|(_, share)| share.to_string()).collect();
    assert_eq!(shares, ["2/5", "12/73", "156/365", "3/365"]);
    assert_eq!(ready.with_share(Suspect::Rest, Fraction::ONE).map(|_| ()), None);
}
