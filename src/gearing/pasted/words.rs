//! What do the words of the trade mean, in the languages of the data sheets?
//!
//! English, German, French, Italian, Spanish, Portuguese, Dutch, Swedish, Polish and a little Russian.
//! Words are compared in small letters and without accents. Common practice, no source.

use super::letters::folded;
use super::tags::Tag;

/// What a word or a phrase means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Meaning {
    /// Names what a value is.
    Tag(Tag),
    /// "gear": a number beside it is a gear's.
    Gear,
    /// "gears": a number before it counts them.
    Gears,
    /// "speed" and words like it: a count's noun, a gear, or how fast the car goes.
    Speed,
    /// "ratio": what the values are that are wanted.
    Heading,
    /// A row or column of something else: overall ratios, steps, spread.
    Measure,
    /// Something that has one number of its own: the engine, the price.
    Property,
    /// A further stage between engine and wheels.
    Stage,
    /// A unit: the number before it is no ratio.
    Unit,
    /// A currency: the number beside it is no ratio.
    Money,
    /// Joins the last of several.
    And,
    /// From one gear to another, or 3.78 "to" 1.
    To,
    /// "per", "at": opens "per 1000 rpm".
    Per,
    /// Says nothing.
    Filler,
}

/// How many words the longest phrase has.
pub(super) const LONGEST_PHRASE: usize = 4;

/// The meaning of `phrase`: one word, or several with single blanks, as they were written.
pub(super) fn meaning(phrase: &str) -> Option<Meaning> {
    if let Some(number) = roman(phrase) {
        return Some(Meaning::Tag(Tag::Gear(number)));
    }
    let capital = match phrase {
        "C" => Some(Tag::Crawler),
        "L" => Some(Tag::Low),
        "H" => Some(Tag::High),
        _ => None,
    };
    let folded = folded(phrase);
    capital
        .or_else(|| number_word(&folded).map(Tag::Gear))
        .or_else(|| other_tag(&folded))
        .map(Meaning::Tag)
        .or_else(|| noun(&folded))
        .or_else(|| left_out(&folded))
        .or_else(|| small_word(&folded))
}

/// The number of a Roman numeral up to twelve, in capitals.
fn roman(word: &str) -> Option<u8> {
    const NUMERALS: [&str; 12] = [
        "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X", "XI", "XII",
    ];
    let at = NUMERALS.iter().position(|numeral| *numeral == word)?;
    u8::try_from(at + 1).ok()
}

/// Whether `letters` behind a number make it an ordinal: `1st`, `2e`, `3ª`.
pub(super) fn is_ordinal_suffix(letters: &str) -> bool {
    const SUFFIXES: &str = "st nd rd th e er ere eme ieme re me de nde nd a o ª º ter te tes er es \
                            i я й";
    SUFFIXES.split(' ').any(|suffix| suffix == folded(letters))
}

fn number_word(word: &str) -> Option<u8> {
    Some(match word {
        "first" | "erster" | "erste" | "premiere" | "primera" | "primeira" | "prima" | "eerste"
        | "ettan" | "pierwszy" => 1,
        "second" | "zweiter" | "zweite" | "deuxieme" | "seconde" | "segunda" | "seconda"
        | "tweede" | "tvaan" | "drugi" => 2,
        "third" | "dritter" | "dritte" | "troisieme" | "tercera" | "terceira" | "terza"
        | "derde" | "trean" | "trzeci" => 3,
        "fourth" | "vierter" | "vierte" | "quatrieme" | "cuarta" | "quarta" | "vierde"
        | "fyran" | "czwarty" => 4,
        "fifth" | "funfter" | "funfte" | "cinquieme" | "quinta" | "vijfde" | "femman" | "piaty" => {
            5
        }
        "sixth" | "sechster" | "sechste" | "sixieme" | "sexta" | "sesta" | "zesde" | "sexan"
        | "szosty" => 6,
        "seventh" | "siebter" | "siebte" | "septieme" | "septima" | "setima" | "settima"
        | "zevende" | "siodmy" => 7,
        "eighth" | "achter" | "achte" | "huitieme" | "octava" | "oitava" | "ottava" | "achtste"
        | "osmy" => 8,
        _ => return None,
    })
}

fn other_tag(phrase: &str) -> Option<Tag> {
    is_reverse(phrase)
        .then_some(Tag::Reverse)
        .or_else(|| is_final_drive(phrase).then_some(Tag::Final))
        .or_else(|| gear_by_name(phrase))
}

fn is_reverse(phrase: &str) -> bool {
    matches!(
        phrase,
        "r" | "rev"
            | "reverse"
            | "rg"
            | "rw"
            | "r gang"
            | "ir"
            | "ruckwarts"
            | "rueckwaerts"
            | "ruckwartsgang"
            | "rueckwaertsgang"
            | "marche arriere"
            | "arriere"
            | "ma"
            | "ar"
            | "mar"
            | "retromarcia"
            | "rm"
            | "marcha atras"
            | "atras"
            | "reversa"
            | "retroceso"
            | "marcha a re"
            | "marcha re"
            | "achteruit"
            | "achteruitversnelling"
            | "backvaxel"
            | "wsteczny"
            | "bieg wsteczny"
            | "задний ход"
            | "зх"
    )
}

fn is_final_drive(phrase: &str) -> bool {
    matches!(
        phrase,
        "fd" | "f/d"
            | "fdr"
            | "final"
            | "final drive"
            | "finals"
            | "axle"
            | "rear axle"
            | "front axle"
            | "drive axle"
            | "rear end"
            | "diff"
            | "rear diff"
            | "differential"
            | "crown wheel"
            | "crownwheel"
            | "crown wheel and pinion"
            | "crownwheel and pinion"
            | "cwp"
            | "cw/p"
            | "cw&p"
            | "ring and pinion"
            | "r&p"
            | "ia"
            | "achse"
            | "hinterachse"
            | "vorderachse"
            | "achsantrieb"
            | "endantrieb"
            | "achsubersetzung"
            | "hinterachsubersetzung"
            | "differentialubersetzung"
            | "differenzial"
            | "kegelrad und tellerrad"
            | "pont"
            | "pont arriere"
            | "rapport de pont"
            | "rapport pont"
            | "rapport final"
            | "couple final"
            | "couple conique"
            | "ponte"
            | "al ponte"
            | "coppia conica"
            | "coppia finale"
            | "rapporto finale"
            | "rapporto al ponte"
            | "finale"
            | "grupo"
            | "grupo conico"
            | "grupo final"
            | "relacion final"
            | "relacao final"
            | "diferencial"
            | "eindoverbrenging"
            | "eindreductie"
            | "achterbrug"
            | "slutvaxel"
            | "bakaxel"
            | "przekladnia glowna"
            | "главная пара"
            | "гп"
    )
}

fn gear_by_name(phrase: &str) -> Option<Tag> {
    Some(match phrase {
        "top" | "top gear" => Tag::Top,
        "high" | "hi" => Tag::High,
        "low" | "lo" => Tag::Low,
        "crawler" | "crawler gear" | "creeper" | "granny" | "granny gear" | "low low" | "ll"
        | "deep low" | "kriechgang" | "kriechergang" | "primera corta" => Tag::Crawler,
        "overdrive" | "o/d" | "od" | "schongang" | "schnellgang" | "surmultipliee" => {
            Tag::Overdrive
        }
        _ => return None,
    })
}

/// Gears, speeds and ratios in general.
fn noun(phrase: &str) -> Option<Meaning> {
    Some(match phrase {
        "gear" | "gang" | "marcia" | "marcha" | "versnelling" | "vaxel" | "bieg" | "передача" => {
            Meaning::Gear
        }
        "gears" | "gange" | "gaenge" | "marce" | "marchas" | "vitesses" | "rapports"
        | "versnellingen" | "vaxlar" | "biegi" | "biegow" | "передачи" => Meaning::Gears,
        "speed" | "speeds" | "vitesse" | "velocidad" | "velocidades" | "velocidade"
        | "velocita" => Meaning::Speed,
        "ratio" | "ratios" | "gear ratio" | "gear ratios" | "ubersetzung" | "ubersetzungen"
        | "uebersetzung" | "rapport" | "rapporto" | "rapporti" | "relacion" | "relaciones"
        | "relacao" | "relacoes" | "overbrenging" | "overbrengingen" | "utvaxling"
        | "przelozenie" | "przelozenia" | "teeth" | "zahne" | "zaehne" | "dents" | "denti"
        | "dientes" | "tanden" => Meaning::Heading,
        _ => return None,
    })
}

/// Things whose numbers are no ratios of a gearbox.
fn left_out(phrase: &str) -> Option<Meaning> {
    Some(match phrase {
        "overall"
        | "overall ratio"
        | "overall ratios"
        | "total"
        | "total ratio"
        | "gesamt"
        | "gesamtubersetzung"
        | "gesamtuebersetzung"
        | "demultiplication totale"
        | "spread"
        | "ratio spread"
        | "spreizung"
        | "ouverture"
        | "step"
        | "steps"
        | "stufensprung"
        | "sprung"
        | "drop"
        | "rpm drop"
        | "geschwindigkeit"
        | "v max"
        | "vmax"
        | "top speed"
        | "max speed"
        | "maximum speed"
        | "road speed"
        | "top speeds"
        | "speed in gears"
        | "speeds in gears"
        | "maxima" => Meaning::Measure,
        "engine" | "motor" | "moteur" | "motore" | "weight" | "gewicht" | "poids" | "peso"
        | "power" | "leistung" | "torque" | "drehmoment" | "couple" | "tyre" | "tyres" | "tire"
        | "tires" | "reifen" | "pneu" | "pneus" | "wheel" | "wheels" | "redline" | "capacity"
        | "displacement" | "hubraum" | "bore" | "stroke" | "price" | "preis" | "prix"
        | "prezzo" | "precio" | "year" | "model year" | "model" | "modell" | "baujahr" | "bj"
        | "jahr" | "mileage" | "consumption" | "verbrauch" | "oil" | "wheelbase"
        | "circumference" | "umfang" | "diameter" | "page" | "seite" | "type" | "typ" => {
            Meaning::Property
        }
        "primary"
        | "primary drive"
        | "primary ratio"
        | "primartrieb"
        | "primary reduction"
        | "primarubersetzung"
        | "transfer"
        | "transfer box"
        | "transfer case"
        | "transfer gear"
        | "transfer gears"
        | "verteilergetriebe"
        | "high range"
        | "low range"
        | "secondary"
        | "secondary drive"
        | "sekundarubersetzung"
        | "chain"
        | "sprocket"
        | "sprockets"
        | "drop gear"
        | "drop gears"
        | "hub reduction"
        | "hub reductions"
        | "portal"
        | "portals"
        | "speedo"
        | "speedometer"
        | "tacho"
        | "head gear"
        | "head gears"
        | "input gear"
        | "input gears"
        | "constant pinion"
        | "constant mesh"
        | "pto"
        | "reduction"
        | "reductor"
        | "boite de transfert" => Meaning::Stage,
        "mph" | "km/h" | "kmh" | "kph" | "kmph" | "m/s" | "rpm" | "r/min" | "rev/min"
        | "tr/min" | "u/min" | "t/min" | "g/min" | "o/min" | "obr/min" | "min" | "km" | "miles"
        | "mi" | "mm" | "cm" | "kg" | "kgs" | "lb" | "lbs" | "lbft" | "nm" | "hp" | "bhp"
        | "ps" | "ch" | "cv" | "kw" | "cc" | "ccm" | "cm3" | "cui" | "l" | "litre" | "litres"
        | "liter" | "ltr" | "litros" | "inch" | "inches" | "mpg" | "percent" | "prozent" | "v"
        | "sec" | "seconds" | "pc" | "valve" | "door" | "doors" | "years" | "owners" => {
            Meaning::Unit
        }
        "eur" | "euro" | "euros" | "gbp" | "usd" | "chf" | "pln" | "sek" | "pounds" | "dollars"
        | "quid" => Meaning::Money,
        _ => return None,
    })
}

fn small_word(word: &str) -> Option<Meaning> {
    Some(match word {
        "and" | "und" | "et" | "e" | "y" | "en" | "och" | "i" | "oraz" | "or" | "oder" | "ou"
        | "и" => Meaning::And,
        "to" | "zu" | "bis" | "till" | "do" | "tot" | "through" | "thru" | "auf" | "a" => {
            Meaning::To
        }
        "per" | "pro" | "at" | "bei" | "par" | "je" | "@" | "przy" => Meaning::Per,
        "drive" | "the" | "of" | "is" | "are" | "was" | "with" | "by" | "for" | "from" | "in"
        | "has" | "mit" | "von" | "der" | "die" | "das" | "ist" | "im" | "de" | "des" | "du"
        | "la" | "le" | "les" | "el" | "il" | "al" | "avec" | "con" | "com" | "no" | "nr"
        | "approx" | "ca" | "all" | "alle" | "one" | "its" | "teeth" | "z" | "x" | "neutral"
        | "n" | "synchro" | "synchromesh" | "direct" | "rear" | "front" | "main" | "box"
        | "value" | "standard" | "optional" | "option" | "early" | "late" => Meaning::Filler,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_several_languages_mean_the_same() {
        for word in [
            "Reverse",
            "R",
            "Rückwärtsgang",
            "Marche arrière",
            "retromarcia",
        ] {
            assert_eq!(meaning(word), Some(Meaning::Tag(Tag::Reverse)), "{word}");
        }
        for word in ["final drive", "Axle", "Hinterachse", "pont", "Endantrieb"] {
            assert_eq!(meaning(word), Some(Meaning::Tag(Tag::Final)), "{word}");
        }
    }

    #[test]
    fn roman_numerals_are_capitals() {
        assert_eq!(meaning("IV"), Some(Meaning::Tag(Tag::Gear(4))));
        assert_eq!(meaning("iv"), None);
        assert_eq!(meaning("i"), Some(Meaning::And));
    }

    #[test]
    fn no_phrase_is_longer_than_the_reader_looks_ahead() {
        let source = include_str!("words.rs");
        for phrase in source.split('"').skip(1).step_by(2) {
            let words = phrase.split(' ').count();
            let is_phrase = meaning(phrase).is_some();
            assert!(!is_phrase || words <= LONGEST_PHRASE, "{phrase}");
        }
    }
}
