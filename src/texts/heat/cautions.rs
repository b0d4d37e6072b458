//! What may hurt at a quench. `{temperature}` and `{difference}` stand for a number with its unit.

pub const WET_INTO_SALT: &str = "Never bring a wet or oily piece into molten salt: it erupts.";
pub const WATER_INTO_OIL: &str = "Water carried into oil spatters, foams over and burns: shake it off, lower the piece from a distance, lid at hand.";
pub const OILY_AND_HOT: &str =
    "Oil on a piece taken out hot smokes and may flash: vent, no flame near, lid at hand.";

pub const BRINE_SPLASHES: &str = "Brine and steam splash: cover face and arms.";
pub const BRINE_CRACKS: &str = "May crack and warp steel of more than about 0.5\u{a0}% carbon.";
pub const BRINE_RUSTS: &str = "Rinse the piece at once: brine rusts steel and tools.";

pub const STEAM: &str = "Steam and hot splashes: cover face and arms.";
pub const WATER_CRACKS: &str = "May crack high-carbon and alloy steel.";
pub const WARM_WATER: &str =
    "Above about {temperature} the vapour film lasts longer and leaves soft spots.";
pub const CONCENTRATION: &str =
    "Check the concentration: it drifts with use and decides the speed.";

pub const OIL_BURNS: &str = "Oil burns: keep the bath well below its flash point, by at least {difference} or as your code asks.";
pub const UNDER_QUICKLY: &str =
    "Put the whole piece under quickly; red steel half out of the oil lights the surface.";
pub const LID_FOR_COOKING_OIL: &str =
    "Keep a lid at hand and a fire extinguisher for cooking oil. Never use water.";
pub const LID_AT_HAND: &str =
    "Keep a lid at hand and a fire extinguisher for burning liquids. Never use water.";
pub const WATER_IN_OIL: &str = "Keep water out: a little in the oil foams and boils over.";
pub const WATER_IN_HOT_OIL: &str = "Above {temperature} any water in the bath flashes to steam and throws burning oil: dry piece, dry tongs.";
pub const OIL_FOR_HOT_BATHS: &str =
    "Only oil made for hot baths, well below its flash point, with temperature control.";

pub const SALT_BURNS: &str =
    "Molten salt burns deeply, and a wet or oily piece makes it erupt: dry and clean only.";
pub const NITRATE: &str = "Nitrate salt feeds fire and explodes with cyanide salt: no oil, charcoal, cyanide, aluminium or magnesium near it.";
pub const LIMIT_OF_SALT: &str = "Stay below the supplier's limit, about {temperature}. Water is added by built-in equipment only.";

pub const PLATES_PINCH: &str = "Plates pinch and burn: clamp with tools.";
pub const PLATES_WARM: &str = "Plates warm with every piece: let them cool between pieces.";

pub const NITROGEN: &str = "Nitrogen takes the place of air without warning: ventilate, and measure oxygen in closed rooms.";
pub const PRESSURE_VESSEL: &str =
    "Above 1 bar absolute it is a pressure vessel: licensed equipment and trained people only.";

pub const BLACK_AND_HOT: &str = "The piece stays hot enough to burn long after it is black.";

pub const KIND_NOT_TOLD: &str = "What your own quenchant is made of is not known here: go by what it is, and by the supplier's safety data sheet.";
pub const IF_OIL: &str = "If it is oil, it burns: well below its flash point, the whole piece under quickly, lid and extinguisher at hand, no water.";
pub const IF_HOT_OIL: &str = "If it is oil: only oil made for hot baths, well below its flash point, lid and extinguisher at hand; any water flashes to steam and throws burning oil.";
pub const IF_WATER: &str =
    "If it is water, brine or polymer: steam burns, and steel of much carbon may crack.";
pub const IF_SALT: &str = "If it is molten salt: dry and clean pieces only, water makes it erupt.";
