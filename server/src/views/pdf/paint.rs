//! Pages painted into a PDF, with an outline and tags for screen readers.

mod ink;
mod tags;

use krilla::Document;
use krilla::SerializeSettings;
use krilla::destination::XyzDestination;
use krilla::geom::Point as PdfPoint;
use krilla::metadata::Metadata;
use krilla::outline::{Outline, OutlineNode};
use krilla::page::PageSettings;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, SpanTag};
use stillground::units::customary::INCH_MM;

use crate::views::pdf::Fault;
use crate::views::pdf::frame::Heading;
use crate::views::pdf::page::{Page, Role};
use ink::Ink;
use tags::Tags;

/// Points of a millimetre.
fn points(mm: f64) -> f32 {
    (mm * 72.0 / INCH_MM) as f32
}

/// Paints pages.
///
/// # Errors
/// When a font file is broken or the writer refuses.
pub fn paint(pages: Vec<Page>, heading: &Heading) -> Result<Vec<u8>, Fault> {
    let ink = Ink::new()?;
    let mut document = Document::new_with(SerializeSettings {
        enable_tagging: true,
        ..SerializeSettings::default()
    });
    document.set_metadata(metadata(heading));
    document.set_outline(outline(&pages));
    let mut tags = Tags::default();
    for page in &pages {
        let settings = PageSettings::from_wh(points(page.width), points(page.height))
            .ok_or_else(|| Fault::Writer("a page without a size".to_owned()))?;
        let mut sheet = document.start_page_with(settings);
        let mut surface = sheet.surface();
        for piece in &page.pieces {
            let tag = match piece.role {
                Role::Ornament => ContentTag::Artifact(Artifact::with_kind(ArtifactType::Other)),
                _ => ContentTag::Span(SpanTag::empty()),
            };
            let identifier = surface.start_tagged(tag);
            for mark in &piece.marks {
                ink.mark(&mut surface, mark);
            }
            surface.end_tagged();
            tags.add(&piece.role, identifier);
        }
        surface.finish();
        sheet.finish();
    }
    document.set_tag_tree(tags.finish());
    document
        .finish()
        .map_err(|error| Fault::Writer(format!("{error:?}")))
}

fn metadata(heading: &Heading) -> Metadata {
    Metadata::new()
        .title(heading.title.clone())
        .description(heading.description.clone())
        .language("en-GB".to_owned())
        .creator("Stillground".to_owned())
}

fn outline(pages: &[Page]) -> Outline {
    let mut outline = Outline::new();
    for (i, page) in pages.iter().enumerate().filter(|(_, page)| page.first) {
        outline.push_child(OutlineNode::new(
            page.sheet.clone(),
            XyzDestination::new(i, PdfPoint::from_xy(0.0, 0.0)),
        ));
    }
    outline
}
