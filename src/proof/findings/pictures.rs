//! Findings about pictures.

use crate::model::{Line, Named};
use crate::proof::code::Code;
use crate::proof::finding::{Finding, did_you_mean};
use crate::proof::photo::Unfit;
use crate::source::Place;

/// The file is not there.
pub fn missing<'a>(file: &Line, known: impl IntoIterator<Item = &'a str>) -> Finding {
    Finding::new(
        Code::MissingPicture,
        file.place,
        format!("no file `{}` in the folder", file.value),
        did_you_mean(&file.value, known, "the path starts at the handbook's folder, such as `pictures/tip.svg`"),
    )
}

/// The path leaves the folder.
pub fn outside(file: &Line) -> Finding {
    Finding::new(
        Code::PictureOutside,
        file.place,
        format!("`{}` lies outside the handbook's folder", file.value),
        "copy the picture into the folder",
    )
}

/// A kind that pages cannot show.
pub fn kind(file: &Line) -> Finding {
    let heic = file.value.to_ascii_lowercase().ends_with(".heic");
    let help = match heic {
        true => "a phone's HEIC is shown by few browsers: export it as JPEG",
        false => "save it as SVG, PNG, JPEG or WebP",
    };
    Finding::new(Code::PictureKind, file.place, format!("pages cannot show `{}`", file.value), help)
}

/// Nothing in it, or more than a picture may have: neither is kept.
pub fn no_bytes(file: &Line) -> Finding {
    Finding::new(
        Code::PictureKind,
        file.place,
        format!("`{}` is empty, or larger than 20 MB", file.value),
        "see whether it opens on your machine; if it does, save a smaller copy: 1,600 pixels are enough",
    )
}

/// It cannot be made fit to be shown.
pub fn unfit(file: &Line, why: &Unfit) -> Finding {
    let name = &file.value;
    let (code, message, help) = match why {
        Unfit::Vast(width, height) => (
            Code::PictureVast,
            format!("`{name}` is {width} by {height} pixels"),
            "save a smaller copy: 1,600 pixels are enough".to_owned(),
        ),
        Unfit::Other(kind @ ("heic" | "gif")) => (
            Code::PictureKind,
            format!("pages cannot show `{name}`: it is a {}", kind.to_uppercase()),
            "export it as JPEG; another ending of its name does not change it".to_owned(),
        ),
        Unfit::Other(kind) => (
            Code::PictureKind,
            format!("`{name}` is a {kind}, its name says otherwise"),
            format!("let its name end in `.{kind}`"),
        ),
        Unfit::Broken => (
            Code::PictureBroken,
            format!("`{name}` cannot be made out"),
            "see whether it opens on your machine; copy it again from where it came".to_owned(),
        ),
    };
    Finding::new(code, file.place, message, help)
}

/// No words for those who cannot see it.
pub fn without_alt(picture: &Named) -> Finding {
    Finding::new(
        Code::PictureAlt,
        picture.place,
        format!("the picture `{}` has no `alt`", picture.value),
        "say under `alt:` what it shows that the reader needs",
    )
}

/// Scripts or outside references.
pub fn unsafe_svg(file: &Line, what: &str) -> Finding {
    Finding::new(
        Code::UnsafeSvg,
        file.place,
        format!("`{}` has {what}", file.value),
        "save it as plain SVG, without scripts, links and outside images",
    )
}

/// Nobody shows it.
pub fn unused(picture: &Named) -> Finding {
    Finding::new(
        Code::UnusedPicture,
        picture.place,
        format!("no guide shows the picture `{}`", picture.value),
        "show it with `picture:`, or take it out",
    )
    .of(picture.value.as_str())
}

/// Nobody lists it.
pub fn unlisted(home: Place, name: &str) -> Finding {
    Finding::new(
        Code::UnusedPicture,
        home,
        format!("no guide lists the picture `{name}`"),
        "list it under `pictures:` of the guide that is to show it, with `alt:`; or take it out of the folder",
    )
    .of(name)
}
