//! What a saved chart or table is called where it is read out.

/// The title of what is saved, by the key in the name of its file, which is no text.
pub fn title(file: &str) -> &str {
    match file {
        "card" => "card",
        "class" => "class",
        "continuous-cooling" => "continuous cooling",
        "end-quench" => "end quench",
        "end-quench-curve" => "end quench curve",
        "hardness-by-step" => "hardness by step",
        "heat-transfer" => "heat transfer",
        "how-sure" => "how sure",
        "logbook" => "logbook",
        "own-quenchant" => "own quenchant",
        "phase-map" => "phase map",
        "phases-at-the-soak" => "phases at the soak",
        "piece-after-each-step" => "piece after each step",
        "places" => "places",
        "probe-curve" => "probe curve",
        "quench" => "quench",
        "quenchant" => "quenchant",
        "quenchants" => "quenchants",
        "replay" => "replay",
        "route" => "route",
        "routes-compared" => "routes compared",
        "routes-side-by-side" => "routes side by side",
        "runs-side-by-side" => "runs side by side",
        "score-computed" => "score computed",
        "score-own-data" => "score own data",
        "score-published" => "score published",
        "section" => "section",
        "soak" => "soak",
        "stable-phases" => "stable phases",
        "sweep" => "sweep",
        "temper" => "temper",
        "trade-off" => "trade off",
        "what-goes-in" => "what goes in",
        "what-moves-hardness" => "what moves hardness",
        "what-to-expect" => "what to expect",
        // One without a title is read out by its key.
        _ => file,
    }
}
