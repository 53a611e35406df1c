//! The commands and their options: spelled once, and from here come `--help`, the man page and the completions.

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Binds a club's repair know-how into an offline handbook, and proofs it first.
///
/// A handbook is a folder of guides, YAML files that say what is seen, what it can be, how to find out and how to mend it.
/// `coquille begin DIR` makes a small one to start from.
#[derive(Debug, Parser)]
#[command(name = "coquille", version, arg_required_else_help = true, max_term_width = 100)]
pub struct Line {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What the program can do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Proof the guides and bind them into a handbook.
    ///
    /// Writes only what changed and never leaves half a handbook. Open `index.html` in the folder it names.
    #[command(after_help = "Example: coquille bind guides --out site")]
    Bind(BindJob),
    /// Proof the guides and write nothing.
    ///
    /// Names every fault with its file, line and column, and what to do about it.
    #[command(after_help = "Example: coquille proof guides --format json")]
    Proof(ProofJob),
    /// Show what lamps and meters read on a circuit, with every fault and in every position.
    ///
    /// A name that is unique without its prefix may be given without it.
    #[command(after_help = "Example: coquille meter foil-on-the-bench --fault worn-at-barrel")]
    Meter(MeterJob),
    /// Print the JSON Schema of a kind of guide, so that an editor completes and checks it.
    #[command(after_help = "Example: coquille schema symptom > symptom.schema.json")]
    Schema(SchemaJob),
    /// Print completions for a shell.
    #[command(after_help = "Example: coquille completions bash > coquille.bash")]
    Completions(CompletionsJob),
    /// Print the manual page.
    #[command(after_help = "Example: coquille manual | man -l -")]
    Manual,
}

/// `bind`.
#[derive(Debug, Args)]
pub struct BindJob {
    /// The folder with the guides.
    #[arg(default_value = "guides")]
    pub guides: PathBuf,
    /// The folder that the handbook is written into.
    #[arg(long, default_value = "site", value_name = "DIR")]
    pub out: PathBuf,
    /// Bind only if there is no advice either.
    #[arg(long)]
    pub strict: bool,
    /// Write into a folder that holds other things too, and over files in the way.
    #[arg(long)]
    pub force: bool,
}

/// `proof`.
#[derive(Debug, Args)]
pub struct ProofJob {
    /// The folder with the guides.
    #[arg(default_value = "guides")]
    pub guides: PathBuf,
    /// How to report.
    #[arg(long, value_enum, default_value = "human")]
    pub format: Format,
    /// Count advice as an error.
    #[arg(long)]
    pub strict: bool,
}

/// How findings are reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    Human,
    /// For programs.
    Json,
    /// SARIF 2.1.0, for editors and code hosts.
    Sarif,
}

/// `meter`.
#[derive(Debug, Args)]
pub struct MeterJob {
    /// The circuit: its id, or its file.
    pub circuit: String,
    /// Only with this fault, beside sound kit.
    #[arg(long, value_name = "FAULT")]
    pub fault: Option<String>,
    /// Only in this position.
    #[arg(long, value_name = "POSITION")]
    pub position: Option<String>,
    /// The folder with the guides.
    #[arg(long = "in", default_value = "guides", value_name = "DIR")]
    pub guides: PathBuf,
    /// How to report.
    #[arg(long, value_enum, default_value = "human")]
    pub format: TableFormat,
}

/// How a table is reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum TableFormat {
    /// For people.
    Human,
    /// For programs.
    Json,
}

/// `schema`.
#[derive(Debug, Args)]
pub struct SchemaJob {
    /// The kind of guide; without it, one schema for all kinds.
    #[arg(value_enum)]
    pub kind: Option<KindName>,
}

/// A kind of guide as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum KindName {
    /// `handbook.yaml`.
    Handbook,
    /// Fault finding.
    Symptom,
    /// A job.
    Procedure,
    /// An inspection.
    Checklist,
    /// An electrical model.
    Circuit,
    /// Parts, tools, consumables.
    Stores,
    /// Limits.
    Limits,
    /// The glossary.
    Words,
}

/// `completions`.
#[derive(Debug, Args)]
pub struct CompletionsJob {
    /// The shell.
    #[arg(value_enum)]
    pub shell: clap_complete::Shell,
}
