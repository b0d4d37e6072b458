//! One chart of a route by itself, for a slide or a page of somebody else's: the text that an address
//! carries, and the text that puts it into a page.

use super::file::WriteError;
use super::link::{LinkError, read_link, write_link};
use crate::route::Route;
use recalesce_texts::save::embed as texts;

/// Stands between the link of the route and the name of the chart.
const SHOWS: &str = "&show=";

/// A chart that can stand by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShownChart {
    /// Temperature against time, step by step.
    Route,
    /// The phase map with the soak.
    Soak,
    /// Cooling curves over transformation curves.
    Quench,
    /// Hardness against tempering temperature.
    Temper,
    /// The phases as a table.
    Phases,
}

impl ShownChart {
    /// All of them, in the order of the bench.
    pub const ALL: [Self; 5] = [
        Self::Route,
        Self::Soak,
        Self::Quench,
        Self::Temper,
        Self::Phases,
    ];

    /// Its name in an address.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Route => "route",
            Self::Soak => "soak",
            Self::Quench => "quench",
            Self::Temper => "temper",
            Self::Phases => "phases",
        }
    }

    /// Its title.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Route => texts::ROUTE,
            Self::Soak => texts::SOAK,
            Self::Quench => texts::QUENCH,
            Self::Temper => texts::TEMPER,
            Self::Phases => texts::PHASES,
        }
    }
}

/// Why an address shows no chart.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum EmbedError {
    /// No chart is called so.
    #[error("{}", texts::NO_SUCH_CHART)]
    NoSuchChart,
    /// The route cannot be read.
    #[error(transparent)]
    Link(#[from] LinkError),
}

/// Whether a text asks for one chart by itself.
#[must_use]
pub fn asks_for_chart(text: &str) -> bool {
    text.contains(SHOWS)
}

/// One chart of a route as the text of an address.
///
/// # Errors
/// As of a link: a route that makes no sense, or one too long.
pub fn write_shown(route: &Route, chart: ShownChart) -> Result<String, WriteError> {
    Ok(format!("{}{SHOWS}{}", write_link(route)?, chart.name()))
}

/// Link, route and chart of such a text, checked as any link.
///
/// # Errors
/// A chart that there is none of, and all that is wrong with a link.
pub fn read_shown(text: &str) -> Result<(&str, Route, ShownChart), EmbedError> {
    let (link, name) = text.split_once(SHOWS).ok_or(EmbedError::NoSuchChart)?;
    let chart = ShownChart::ALL
        .into_iter()
        .find(|chart| chart.name() == name)
        .ok_or(EmbedError::NoSuchChart)?;
    Ok((link, read_link(link)?, chart))
}

/// What puts an address into a page of somebody else's, as HTML.
#[must_use]
pub fn frame_text(address: &str, title: &str) -> String {
    format!(
        r#"<iframe src="{}" title="{}" width="640" height="480" loading="lazy" style="border:0;max-width:100%"></iframe>"#,
        escaped(address),
        escaped(title)
    )
}

/// A text within an attribute of HTML.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('"', "&quot;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_chart_comes_back_with_its_route() {
        for chart in ShownChart::ALL {
            let text = write_shown(&Route::example(), chart).unwrap();
            assert!(asks_for_chart(&text));
            let link = write_link(&Route::example()).unwrap();
            assert_eq!(
                read_shown(&text).unwrap(),
                (link.as_str(), Route::example(), chart)
            );
        }
    }

    #[test]
    fn a_link_alone_asks_for_no_chart() {
        let link = write_link(&Route::example()).unwrap();
        assert!(!asks_for_chart(&link));
        assert_eq!(read_shown(&link), Err(EmbedError::NoSuchChart));
    }

    #[test]
    fn hostile_texts_are_refused_in_a_line() {
        let link = write_link(&Route::example()).unwrap();
        for name in [
            "",
            "all",
            "<script>",
            "quench&show=soak",
            "Quench",
            "quench&x=1",
        ] {
            let refused = read_shown(&format!("{link}&show={name}")).unwrap_err();
            assert_eq!(refused, EmbedError::NoSuchChart, "{name}");
        }
        for route in ["", "5.<script>", "4.AAAA", "5.AAAA"] {
            let refused = read_shown(&format!("{route}&show=quench")).unwrap_err();
            assert!(matches!(refused, EmbedError::Link(_)), "{route}");
            assert!(!refused.to_string().contains(['\n', '<']));
        }
    }

    #[test]
    fn a_title_stays_within_its_attribute() {
        let text = frame_text("https://example.org/#route=5.A&show=soak", "\"><script>");
        assert!(text.starts_with("<iframe src=\"https://example.org/#route=5.A&amp;show=soak\" title=\"&quot;&gt;&lt;script&gt;\" "));
        assert_eq!(text.matches('<').count(), 2);
    }
}
