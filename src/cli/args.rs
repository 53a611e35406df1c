//! The commands and their options: spelled once, and from here come `--help`, the man page and the completions.

use clap::{Args, Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Binds a club's repair know-how into an offline handbook, and proofs it first.
///
/// A handbook is a folder of guides: YAML files that say what is seen, what it can be, how to find out and how to mend it.
/// `coquille begin DIR` makes a small one to start from.
#[derive(Debug, Parser)]
#[command(name = "coquille", version, max_term_width = 80, after_help = GOOD_TO_KNOW)]
pub struct Line {
    /// What to do; nothing when the program was started bare.
    #[command(subcommand)]
    pub command: Option<Command>,
}

const GOOD_TO_KNOW: &str = "A handbook's folder is `guides` unless you name another.\n\
    Exit: 0 good, 1 the guides have errors, 2 it could not run.";

/// What the program can do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Make a handbook to start from: a small one, or the whole trade's.
    ///
    /// The small one is of a club that does not exist. Its comments teach the format: change it line by line until it is
    /// yours. With `--whole` you get every guide that the program comes with, in a folder `whole`, under your club's name.
    #[command(after_help = "Examples:\n  \
        coquille begin guides\n  \
        coquille begin guides --whole --club \"Our Fencing Club\"\n\
        One more guide: coquille begin --guide procedure > guides/jobs/new.yaml")]
    Begin(BeginJob),
    /// Proof the guides and write nothing.
    ///
    /// Names every fault with its file, line and column, and what to do about it. An error keeps a handbook from being
    /// bound; advice does not.
    #[command(after_help = "Example: coquille proof guides")]
    Proof(ProofJob),
    /// Proof the guides and bind them into a handbook.
    ///
    /// Writes only what changed and never leaves half a handbook. Open `index.html` in the folder that it names.
    #[command(after_help = "Examples:\n  \
        coquille bind guides --out site\n  \
        coquille bind guides --as folder,zip,single,epub")]
    Bind(BindJob),
    /// Show the handbook on this computer while you write it.
    ///
    /// Says an address to open in a browser. When a guide is saved, the open page shows what became of it, with every
    /// finding at its place. Nothing is written. It ends with Ctrl-C.
    #[command(after_help = "Example: coquille lectern guides")]
    Lectern(LecternJob),
    /// Reckon the order of the questions of a fault-finding guide.
    ///
    /// Says what each cause's share is, how long the author's order takes on average and at most, which order is quickest,
    /// and what the questions cannot tell. Nothing is written.
    #[command(after_help = "Examples:\n  \
        coquille reckon foil-stays-lit\n  \
        coquille reckon foil-stays-lit --order barrel-turns,clean-and-try\n  \
        coquille reckon foil-stays-lit --what-if dirt-in-tip=30")]
    Reckon(ReckonJob),
    /// Show what lamps and meters read on a circuit, with every fault and in every position.
    ///
    /// A name that is unique without its prefix may be given without it.
    #[command(after_help = "Example: coquille meter foil-on-the-bench --fault worn-at-barrel")]
    Meter(MeterJob),
    /// Count the cases that were written down at the bench.
    ///
    /// Prints updated counts for each guide, with what they do to its minutes, to look at and paste. No guide is changed.
    #[command(after_help = "The table is CSV with a first line: date,item number,guide,cause,minutes\n\
        Example: coquille tally bench.csv -o counts.yaml")]
    Tally(TallyJob),
    /// Make bench sheets to print: as PDF, or as one HTML file.
    ///
    /// A sheet has boxes to tick, blanks for readings with their limits, and places for number, owner, date and name. Its
    /// code changes when what it says changes.
    #[command(after_help = "Examples:\n  \
        coquille sheet rewire-foil\n  \
        coquille sheet foil-before-an-event --for F1..F12,F20 -o foils.pdf\n  \
        coquille sheet --kit rewire-foil re-tape-foil --for F1..F3 -o kit.html")]
    Sheet(SheetJob),
    /// Print the JSON Schema of a kind of guide, for editors.
    ///
    /// An editor that knows it completes keys and marks mistakes while you type. Many editors take it from a comment in
    /// the first line of a guide: `# yaml-language-server: $schema=symptom.schema.json`
    #[command(after_help = "Example: coquille schema symptom > symptom.schema.json")]
    Schema(SchemaJob),
    /// Print completions for a shell.
    #[command(after_help = "Example: coquille completions bash > coquille.bash")]
    Completions(CompletionsJob),
    /// Print the manual page.
    #[command(after_help = "Example: coquille manual > coquille.1")]
    Manual,
}

/// `begin`.
#[derive(Debug, Args)]
pub struct BeginJob {
    /// The folder for the guides. It must be new or empty.
    #[arg(value_name = "DIR", required_unless_present = "guide")]
    pub folder: Option<PathBuf>,
    /// Print one guide of a kind to fill in, and write nothing.
    #[arg(long, value_enum, value_name = "KIND", conflicts_with = "folder")]
    pub guide: Option<Blank>,
    /// Start from the whole trade's handbook.
    #[arg(long, conflicts_with = "guide")]
    pub whole: bool,
    /// With `--whole`: what your club is called. Without it you are asked.
    #[arg(long, value_name = "NAME", requires = "whole")]
    pub club: Option<String>,
    /// With `--whole`: the paper that you print on. Without it: A4.
    #[arg(long, value_enum, value_name = "SIZE", requires = "whole")]
    pub paper: Option<PaperName>,
    /// With `--whole`: the units that come first. Without it: metric.
    #[arg(long, value_enum, value_name = "UNITS", requires = "whole")]
    pub units: Option<UnitsName>,
}

/// Units as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum UnitsName {
    /// Grams, millimetres.
    Metric,
    /// Ounces, inches.
    Imperial,
}

/// A kind of guide that can be begun by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Blank {
    /// Fault finding.
    Symptom,
    /// A job.
    Procedure,
    /// An inspection.
    Checklist,
    /// Parts, tools, consumables.
    Stores,
    /// Limits.
    Limits,
    /// The glossary.
    Words,
    /// A way to learn.
    Learning,
    /// An electrical model.
    Circuit,
    /// Where guides from elsewhere came from.
    Pack,
    /// The handbook as a whole.
    Handbook,
}

/// `reckon`.
#[derive(Debug, Args)]
pub struct ReckonJob {
    /// The guide: its id or its file.
    #[arg(value_name = "GUIDE")]
    pub guide: String,
    /// The folder with the guides. Without it: `guides`, or the handbook that the file belongs to.
    #[arg(long = "in", value_name = "DIR")]
    pub guides: Option<PathBuf>,
    /// How to report.
    #[arg(long, value_enum, default_value = "human")]
    pub format: Reckoned,
    /// Price this order too: ids of questions with commas between. Those left out follow as written.
    #[arg(long, value_name = "A,B,C", value_delimiter = ',')]
    pub order: Vec<String>,
    /// Try another share: a cause, or `rest` for what is not on the list, and how many in 100. The others are scaled.
    #[arg(long, value_name = "CAUSE=SHARE")]
    pub what_if: Option<String>,
}

/// How the reckoning is reported.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Reckoned {
    /// For people.
    Human,
    /// For programs.
    Json,
}

/// A form in which a handbook is passed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, ValueEnum)]
pub enum Form {
    /// A folder of pages: `OUT`.
    Folder,
    /// The folder, packed: `OUT.zip`.
    Zip,
    /// One file that holds everything: `OUT.html`.
    Single,
    /// A book for e-readers and phones: `OUT.epub`.
    Epub,
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
    /// An earlier bound handbook: mark what changed since, page by page, name the sheets to print again, and go on knowing
    /// their former codes. It may be the folder that is written into.
    #[arg(long, value_name = "OLD")]
    pub since: Option<PathBuf>,
    /// The forms to write, with commas between; they stand side by side.
    #[arg(long = "as", value_enum, value_delimiter = ',', default_value = "folder", value_name = "FORM,…")]
    pub forms: Vec<Form>,
    /// Bind only if there is no advice either.
    #[arg(long)]
    pub strict: bool,
    /// Put a PDF beside every bench sheet.
    #[arg(long)]
    pub pdf: bool,
    /// Write into a folder that holds other things too, and over files in the way.
    #[arg(long)]
    pub force: bool,
}

/// `lectern`.
#[derive(Debug, Args)]
pub struct LecternJob {
    /// The folder with the guides.
    #[arg(default_value = "guides")]
    pub guides: PathBuf,
    /// The port of the address; 0 takes any that is free.
    #[arg(long, default_value_t = 4680, value_name = "N")]
    pub port: u16,
}

/// `sheet`.
#[derive(Debug, Args)]
pub struct SheetJob {
    /// The guides: ids or files of fault finding, jobs and checklists.
    #[arg(value_name = "GUIDE", required = true)]
    pub guides: Vec<String>,
    /// The folder with the guides. Without it: `guides`, or the handbook that the first file belongs to.
    #[arg(long = "in", value_name = "DIR")]
    pub folder: Option<PathBuf>,
    /// The file to write: `.pdf` or `.html`. Without it: the first guide's id with `.pdf`.
    #[arg(short = 'o', long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// The paper. Without it: what the handbook says.
    #[arg(long, value_enum, value_name = "SIZE")]
    pub paper: Option<PaperName>,
    /// Numbers to print in, one sheet for each: `F1..F12,F20`.
    #[arg(long = "for", value_name = "NUMBERS")]
    pub numbers: Option<String>,
    /// Instead of the sheets, one that says what to fetch for them and how long they take.
    #[arg(long)]
    pub kit: bool,
    /// Make HTML to print from a browser.
    #[arg(long)]
    pub html: bool,
}

/// A paper as written on the command line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PaperName {
    /// 210 × 297 mm.
    A4,
    /// 8.5 × 11 in.
    Letter,
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
    /// Show the entries that guides from elsewhere need, ask, and write them into files of their own.
    #[arg(long, conflicts_with = "format")]
    pub mend: bool,
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

/// `tally`.
#[derive(Debug, Args)]
pub struct TallyJob {
    /// The table, as a spreadsheet saves it with the type CSV.
    #[arg(value_name = "FILE.csv")]
    pub table: PathBuf,
    /// The folder with the guides.
    #[arg(long = "in", default_value = "guides", value_name = "DIR")]
    pub guides: PathBuf,
    /// Write the counts into a new file instead.
    #[arg(short, long, value_name = "FILE")]
    pub output: Option<PathBuf>,
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
    /// Guides from elsewhere.
    Pack,
    /// A way to learn.
    Learning,
}

/// `completions`.
#[derive(Debug, Args)]
pub struct CompletionsJob {
    /// The shell.
    #[arg(value_enum)]
    pub shell: clap_complete::Shell,
}
