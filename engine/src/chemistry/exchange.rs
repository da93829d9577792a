//! Exchange capacity and who holds it.

use crate::chemistry::Chemistry;
use crate::chemistry::acidity::{Acidity, acidity};
use crate::chemistry::sodium::line_here;
use crate::quantity::{Band, Figure, Grounds, Measures, Unit, shown, significant};
use crate::ranges::{Setting, as_saturated_paste, has_free_lime};
use crate::soil::{Amount, Method, Property, Soil, Texture};
use crate::sources::{
    ARITHMETIC, CLEMSON_CEC, COLORADO_SODIC, COMMON_PRACTICE, OSU_CEC, OUR_CHOICE, UMN_ESP,
};

/// The bases, in the order they are summed.
const BASES: [Property; 4] =
    [Property::Calcium, Property::Magnesium, Property::Potassium, Property::Sodium];

/// One base on the exchange, meq/100 g.
struct Base {
    property: Property,
    band: Band,
    printed: String,
    method: Method,
}

/// Whether an extract comes close to the exchangeable cations.
fn estimates_exchange(method: Method) -> bool {
    matches!(
        method,
        Method::Mehlich3
            | Method::AmmoniumAcetate
            | Method::AmmoniumNitrate
            | Method::Morgan
            | Method::ModifiedMorgan
            | Method::Mehlich1
    )
}

/// A base by weight in a fitting extract.
fn base(soil: &Soil, property: Property) -> Option<Base> {
    let charge = property.mg_per_mmolc()? * 10.0;
    soil.measures.iter().filter(|m| m.property == property).find_map(|m| {
        let method = m.method.filter(|m| estimates_exchange(*m))?;
        if m.unit != Unit::MgPerKg {
            return None;
        }
        let (band, word) = match m.amount {
            Amount::Exactly(v) => (Band::exactly(v), ""),
            Amount::Below(limit) => (Band::new(0.0, limit / 2.0, limit), "below "),
            Amount::Above(_) => return None,
        };
        let printed = format!("{word}{} mg/kg", significant(m.amount.number(), 4));
        Some(Base { property, band: band.map(|v| v / charge), printed, method })
    })
}

/// The capacity by summation, with its parts.
struct Summed {
    bases: Vec<Base>,
    base_sum: Band,
    acid: Band,
    cec: Band,
    grounds: Grounds,
}

pub(super) fn work_out(soil: &Soil, setting: &Setting, chemistry: &mut Chemistry) {
    let summed = sum(soil, chemistry);
    let printed = soil.value(Property::Cec).filter(|v| *v > 0.0);
    let cec = match (&summed, printed) {
        (Some(summed), Some(printed)) => {
            Some(printed_beside_sum(summed, printed, &mut chemistry.figures))
        }
        (None, Some(printed)) => {
            chemistry.figures.push(as_printed(printed));
            Some(Band::exactly(printed))
        }
        (Some(summed), None) => {
            chemistry.figures.push(capacity("cec", summed));
            Some(summed.cec)
        }
        (None, None) => setting.texture.map(|texture| {
            let figure = by_texture(texture);
            let band = figure.band;
            chemistry.figures.push(figure);
            band
        }),
    };
    chemistry.cec = cec;
    if let (Some(summed), Some(cec)) = (&summed, cec) {
        saturations(soil, setting, summed, cec, &mut chemistry.figures);
    }
}

/// Capacity by summation; `None` unless calcium, magnesium and potassium are
/// there by weight in fitting extracts, and acidity can at least be bounded.
fn sum(soil: &Soil, chemistry: &mut Chemistry) -> Option<Summed> {
    let bases: Vec<Base> = BASES.into_iter().filter_map(|p| base(soil, p)).collect();
    let has = |p: Property| bases.iter().any(|b| b.property == p);
    if !BASES[..3].iter().all(|p| has(*p)) {
        return None;
    }
    let base_sum = bases.iter().fold(Band::exactly(0.0), |sum, b| sum.plus(b.band));
    let Acidity { band: acid, grounds: acid_grounds } =
        acidity(soil, base_sum.likely, &mut chemistry.questions)?;
    let mut grounds = Grounds::new(
        format!(
            "Calcium + magnesium + potassium + sodium + acidity, each by its charge. {}",
            acid_grounds.rule
        ),
        &[OSU_CEC.opened(), CLEMSON_CEC.opened(), ARITHMETIC.derived()],
    );
    for base in &bases {
        grounds = grounds.input(
            base.property.label(),
            format!("{} = {} meq/100 g", base.printed, significant(base.band.likely, 3)),
        );
    }
    grounds = grounds.with(&acid_grounds);
    if !has(Property::Sodium) {
        grounds = grounds.assume("Sodium was not measured; it is taken as none.");
    }
    if bases.iter().any(|b| b.method == Method::Mehlich1) {
        grounds = grounds.assume("Mehlich-1 is a weak extract; it may miss part of the cations.");
    }
    let mut cec = base_sum.plus(acid);
    if cec.likely <= 0.0 {
        return None;
    }
    if soil.value(Property::Ph).is_some_and(|ph| ph >= 7.0) || has_free_lime(soil) {
        cec = Band::new(cec.low / 2.0, cec.likely, cec.high);
        grounds = grounds.assume(
            "From pH 7 the extract may dissolve free lime and count it. The true capacity may be as low as half the sum.",
        );
        grounds.sources.push(COMMON_PRACTICE.unsourced());
        grounds.sources.push(OUR_CHOICE.unsourced());
    }
    Some(Summed { bases, base_sum, acid, cec, grounds })
}

fn capacity(name: &'static str, summed: &Summed) -> Figure {
    let label = match name {
        "cec" => Property::Cec.label(),
        _ => "exchange capacity by summation",
    };
    Figure::new(name, label, summed.cec, Unit::MeqPer100g, summed.grounds.clone())
}

fn as_printed(printed: f64) -> Figure {
    let grounds = Grounds::new("As the lab gives it.", &[])
        .input("CEC", format!("{} meq/100 g", significant(printed, 3)));
    Figure::new("cec", Property::Cec.label(), Band::exactly(printed), Unit::MeqPer100g, grounds)
}

/// The laboratory's capacity beside the sum. Gives the capacity to divide by:
/// the printed one, widened to the sum where the sum doesn't bear it out.
fn printed_beside_sum(summed: &Summed, printed: f64, figures: &mut Vec<Figure>) -> Band {
    let nearest = printed.clamp(summed.cec.low, summed.cec.high);
    let cec = Band::new(printed.min(nearest), printed, printed.max(nearest));
    let mut figure = as_printed(printed);
    figure.band = cec;
    let apart = (nearest - printed).abs() / printed * 100.0;
    if apart > 20.0 {
        figure.grounds = figure.grounds.assume(format!(
            "The sum of the cations differs from the lab's number by {} %. Lime, salts or another method can do that; both are kept.",
            significant(apart, 2)
        ));
    }
    figures.push(figure);
    figures.push(capacity("cec-by-summation", summed));
    cec
}

/// Usual capacity of a texture, meq/100 g.
fn by_texture(texture: Texture) -> Figure {
    let (low, high) = match texture {
        Texture::Sand | Texture::LoamySand => (3.0, 5.0),
        // Between the rows for sand and loam.
        Texture::SandyLoam => (5.0, 10.0),
        Texture::Loam | Texture::SandyClayLoam => (10.0, 15.0),
        Texture::Silt | Texture::SiltLoam => (15.0, 25.0),
        _ => (20.0, 50.0),
    };
    let grade = match texture {
        Texture::SandyLoam | Texture::SandyClayLoam => OSU_CEC.derived(),
        _ => OSU_CEC.opened(),
    };
    let grounds = Grounds::new("The usual range for this texture.", &[grade])
        .input("texture", texture.label())
        .assume("No cations by weight were reported, so only the texture speaks. Much organic matter adds to it.");
    let band = Band::new(low, (low + high) / 2.0, high);
    Figure::new("cec", Property::Cec.label(), band, Unit::MeqPer100g, grounds)
}

/// A share of the exchange capacity, %.
fn share(part: Band, cec: Band) -> Band {
    let percent = |part: f64, whole: f64| (100.0 * part / whole).min(100.0);
    Band::new(
        percent(part.low, cec.high),
        percent(part.likely, cec.likely),
        percent(part.high, cec.low),
    )
}

fn saturations(
    soil: &Soil,
    setting: &Setting,
    summed: &Summed,
    cec: Band,
    figures: &mut Vec<Figure>,
) {
    // Bases beyond the capacity are dissolved lime or salts: shares are then
    // of the bases themselves, so that they don't add to more than the whole.
    let too_many = summed.base_sum.likely > cec.likely;
    let cec = if too_many {
        Band::new(cec.low, summed.base_sum.likely, cec.high.max(summed.base_sum.high))
    } else {
        cec
    };
    let grounds = |what: &str| {
        let own = Grounds::new(
            format!("100 × {what} ÷ exchange capacity, both in meq/100 g."),
            &[CLEMSON_CEC.opened()],
        )
        .input(
            if too_many { "sum of the bases" } else { "exchange capacity" },
            shown(&cec, Unit::MeqPer100g, Measures::Metric),
        );
        let all = own.with(&summed.grounds);
        if too_many {
            all.assume("The bases add to more than the capacity, so shares are of their sum.")
        } else {
            all
        }
    };
    let figure =
        |name, label, band, grounds| Figure::new(name, label, band, Unit::Percent, grounds);
    for base in &summed.bases {
        let (name, label) = match base.property {
            Property::Calcium => ("calcium-saturation", "calcium saturation"),
            Property::Magnesium => ("magnesium-saturation", "magnesium saturation"),
            Property::Potassium => ("potassium-saturation", "potassium saturation"),
            _ => ("sodium-saturation", "exchangeable sodium (ESP)"),
        };
        let mut why = grounds(base.property.label());
        if base.property == Property::Sodium {
            let (line, _) = line_here(soil, setting, share(base.band, cec).likely);
            why = of_sodium(why, line, is_salty(soil, setting));
        }
        figures.push(figure(name, label, share(base.band, cec), why));
    }
    let bases = share(summed.base_sum, cec);
    figures.push(figure("base-saturation", "base saturation", bases, grounds("all bases")));
    // What a printed capacity holds beside the bases is no acidity there.
    if summed.acid.high > 0.0 {
        let acid = bases.map(|b| 100.0 - b);
        let why = grounds("all that is not a base");
        figures.push(figure("acidity-saturation", "acidity saturation", acid, why));
    }
}

/// What is to be said of the share of sodium beside the others.
fn of_sodium(mut grounds: Grounds, line: f64, salty: bool) -> Grounds {
    grounds.rule.push_str(&format!(
        " From {} % a soil counts as sodic: its structure breaks down.",
        significant(line, 3)
    ));
    grounds.sources.push(COLORADO_SODIC.opened());
    if !salty {
        return grounds;
    }
    grounds.sources.push(UMN_ESP.opened());
    grounds
        .assume("The soil is salty: sodium in the soil water is counted too, so this is too high.")
}

/// Whether the salts may reach the saline class (4 dS/m in saturated paste).
fn is_salty(soil: &Soil, setting: &Setting) -> bool {
    soil.get(Property::Ec)
        .and_then(|m| as_saturated_paste(m.amount.number(), m.method, setting.texture))
        .is_some_and(|(paste, _)| paste.likely >= 4.0)
}
