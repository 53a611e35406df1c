//! The cluster rule: looks at causes of their own, behind a forest of access jobs, in the quickest order.
//!
//! In: jobs and probes with minutes and the weight that each probe catches. Out: the order of least Σ weight × completion time.
//! Horn, SIAM J. Applied Mathematics 23, 1972 (single machine, tree precedence); for access jobs Ottosen & Jensen, arXiv 1203.3502. Without jobs
//! it is the ratio rule: Smith 1956, Kadane & Simon 1977. Leaves to the caller whether the case is of that kind.

use std::cmp::Ordering;

/// Something to do, after its parent.
#[derive(Clone, Debug)]
pub(super) struct Task {
    pub minutes: u64,
    pub weight: u64,
    /// The task that must be done before, by place.
    pub parent: Option<usize>,
}

struct Cluster {
    minutes: u128,
    weight: u128,
    tasks: Vec<usize>,
    parent: Option<usize>,
}

/// The order of least Σ weight × completion time; ties go to the earlier task.
pub(super) fn in_best_order(tasks: &[Task]) -> Vec<usize> {
    let one = |(place, task): (usize, &Task)| {
        let (minutes, weight) = (task.minutes.into(), task.weight.into());
        Some(Cluster { minutes, weight, tasks: vec![place], parent: task.parent })
    };
    let mut clusters: Vec<Option<Cluster>> = tasks.iter().enumerate().map(one).collect();
    let mut home: Vec<usize> = (0..tasks.len()).collect();
    let mut order = Vec::new();
    // The cluster that catches most per minute follows its parent at once in some best order, so the two become one.
    while let Some(best) = best(&clusters) {
        let Some(cluster) = clusters[best].take() else {
            break;
        };
        match cluster.parent.map(|parent| home[parent]) {
            None => {
                order.extend(&cluster.tasks);
                free_children(&mut clusters, &cluster.tasks);
            }
            Some(parent) => {
                cluster.tasks.iter().for_each(|task| home[*task] = parent);
                if let Some(parent) = &mut clusters[parent] {
                    parent.minutes += cluster.minutes;
                    parent.weight += cluster.weight;
                    parent.tasks.extend(cluster.tasks);
                }
            }
        }
    }
    order
}

fn free_children(clusters: &mut [Option<Cluster>], done: &[usize]) {
    for cluster in clusters.iter_mut().flatten() {
        if cluster.parent.is_some_and(|parent| done.contains(&parent)) {
            cluster.parent = None;
        }
    }
}

fn best(clusters: &[Option<Cluster>]) -> Option<usize> {
    let alive = clusters.iter().enumerate().filter_map(|(place, cluster)| Some((place, cluster.as_ref()?)));
    let better = |a: &Cluster, b: &Cluster| (b.weight * a.minutes).cmp(&(a.weight * b.minutes));
    alive.min_by(|a, b| better(a.1, b.1).then(a.0.cmp(&b.0)).then(Ordering::Equal)).map(|(place, _)| place)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cost(tasks: &[Task], order: &[usize]) -> u64 {
        let mut clock = 0;
        let done = order.iter().map(|task| {
            clock += tasks[*task].minutes;
            clock * tasks[*task].weight
        });
        done.sum()
    }

    fn tasks(rows: &[(u64, u64, Option<usize>)]) -> Vec<Task> {
        rows.iter()
            .map(|(minutes, weight, parent)| Task { minutes: *minutes, weight: *weight, parent: *parent })
            .collect()
    }

    /// Smith, Naval Research Logistics Quarterly 3, 1956; the instance is a textbook's, with a true tie.
    #[test]
    fn the_ratio_rule_gives_a_textbook_instance_its_151() {
        let tasks = tasks(&[(6, 1, None), (2, 2, None), (8, 4, None), (3, 1, None), (9, 3, None)]);
        assert_eq!(cost(&tasks, &in_best_order(&tasks)), 151);
    }

    #[test]
    fn a_forest_costs_what_trying_every_order_costs() {
        let tasks =
            tasks(&[(4, 0, None), (3, 0, Some(0)), (1, 5, Some(0)), (2, 9, Some(1)), (5, 4, None), (1, 1, Some(1))]);
        let mut least = u64::MAX;
        let mut order = Vec::new();
        try_all(&tasks, &mut order, &mut least);
        assert_eq!(cost(&tasks, &in_best_order(&tasks)), least);
    }

    fn try_all(tasks: &[Task], order: &mut Vec<usize>, least: &mut u64) {
        if order.len() == tasks.len() {
            *least = (*least).min(cost(tasks, order));
        }
        for next in 0..tasks.len() {
            let ready = tasks[next].parent.is_none_or(|parent| order.contains(&parent));
            if ready && !order.contains(&next) {
                order.push(next);
                try_all(tasks, order, least);
                order.pop();
            }
        }
    }
}
