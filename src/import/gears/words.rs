//! The vocabulary of the trade: which words say the same thing, and what they mean.
//!
//! Words are English, German, French, Italian, Spanish, Portuguese, Dutch, Swedish, Polish and a
//! little Russian; they are compared in small letters and without accents. Common practice, no
//! source.

use super::pieces::Tag;
use crate::import::plain::{NUMERALS, folded};
use std::collections::BTreeMap;
use std::sync::LazyLock;

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
    /// "for", before the gears of a final drive.
    For,
    /// 1:1, where it stands for a ratio.
    Direct,
    /// Says nothing.
    Filler,
}

/// How many words the longest phrase has.
pub(super) const LONGEST_PHRASE: usize = 4;

/// Every phrase, with what it means.
const VOCABULARY: &[(Meaning, &str)] = &[
    (
        Meaning::Tag(Tag::Gear(1)),
        "first; erster; erste; premiere; primera; primeira; prima; eerste; ettan; \
         pierwszy",
    ),
    (
        Meaning::Tag(Tag::Gear(2)),
        "second; zweiter; zweite; deuxieme; seconde; segunda; seconda; tweede; tvaan; \
         drugi",
    ),
    (
        Meaning::Tag(Tag::Gear(3)),
        "third; dritter; dritte; troisieme; tercera; terceira; terza; derde; trean; \
         trzeci",
    ),
    (
        Meaning::Tag(Tag::Gear(4)),
        "fourth; vierter; vierte; quatrieme; cuarta; quarta; vierde; fyran; czwarty",
    ),
    (
        Meaning::Tag(Tag::Gear(5)),
        "fifth; funfter; funfte; cinquieme; quinta; vijfde; femman; piaty",
    ),
    (
        Meaning::Tag(Tag::Gear(6)),
        "sixth; sechster; sechste; sixieme; sexta; sesta; zesde; sexan; szosty",
    ),
    (
        Meaning::Tag(Tag::Gear(7)),
        "seventh; siebter; siebte; septieme; septima; setima; settima; zevende; \
         siodmy",
    ),
    (
        Meaning::Tag(Tag::Gear(8)),
        "eighth; achter; achte; huitieme; octava; oitava; ottava; achtste; osmy",
    ),
    (
        Meaning::Tag(Tag::Reverse),
        "r; rev; reverse; rg; rw; r gang; ir; ruckwarts; rueckwaerts; ruckwartsgang; \
         rueckwaertsgang; marche arriere; arriere; ma; ar; mar; retromarcia; rm; \
         marcha atras; atras; reversa; retroceso; marcha a re; marcha re; achteruit; \
         achteruitversnelling; backvaxel; wsteczny; bieg wsteczny; задний ход; зх",
    ),
    (
        Meaning::Tag(Tag::Final),
        "fd; f/d; fdr; final; final drive; final reduction; finals; axle; rear axle; \
         front axle; drive axle; rear end; diff; diffs; rear diff; differential; differentials; axles; crown wheel; \
         crownwheel; crown wheel and pinion; crownwheel and pinion; cwp; cw/p; cw&p; \
         ring and pinion; r&p; ia; achse; hinterachse; vorderachse; achsantrieb; \
         endantrieb; achsubersetzung; hinterachsubersetzung; differentialubersetzung; \
         differenzial; kegelrad und tellerrad; pont; pont arriere; rapport de pont; \
         rapport pont; rapport final; couple; couple final; couple reducteur; \
         couple conique; ponte; al ponte; coppia conica; coppia finale; \
         rapporto finale; rapporto al ponte; finale; grupo; grupo conico; grupo final; \
         relacion final; relacao final; diferencial; eindoverbrenging; eindreductie; \
         achterbrug; slutvaxel; bakaxel; przekladnia glowna; главная пара; гп",
    ),
    (Meaning::Tag(Tag::Top), "top; top gear"),
    (Meaning::Tag(Tag::High), "high; hi"),
    (Meaning::Tag(Tag::Low), "low; lo"),
    (
        Meaning::Tag(Tag::Crawler),
        "crawler; crawler gear; creeper; granny; granny gear; low low; ll; deep low; \
         kriechgang; kriechergang; primera corta",
    ),
    (
        Meaning::Tag(Tag::Overdrive),
        "overdrive; o/d; od; schongang; schnellgang; surmultipliee",
    ),
    (
        Meaning::Gear,
        "gear; gang; marcia; marcha; versnelling; vaxel; bieg; передача",
    ),
    (
        Meaning::Gears,
        "gears; gange; gaenge; marce; marchas; vitesses; rapports; versnellingen; \
         vaxlar; biegi; biegow; передачи",
    ),
    (
        Meaning::Speed,
        "speed; speeds; vitesse; velocidad; velocidades; velocidade; velocita",
    ),
    (
        Meaning::Heading,
        "ratio; ratios; gear ratio; gear ratios; ubersetzung; ubersetzungen; \
         uebersetzung; rapport; rapporto; rapporti; relacion; relaciones; relacao; \
         relacoes; overbrenging; overbrengingen; utvaxling; reduction; reductions; \
         przelozenie; przelozenia; teeth; zahne; zaehne; dents; denti; dientes; \
         tanden",
    ),
    (
        Meaning::Measure,
        "overall; overall ratio; overall ratios; total; total ratio; gesamt; \
         gesamtubersetzung; gesamtuebersetzung; demultiplication totale; spread; \
         ratio spread; spreizung; ouverture; step; steps; stufensprung; sprung; drop; \
         rpm drop; geschwindigkeit; v max; vmax; top speed; max speed; maximum speed; \
         road speed; top speeds; speed in gears; speeds in gears; maxima",
    ),
    (
        Meaning::Property,
        "engine; motor; moteur; motore; weight; gewicht; poids; peso; power; leistung; \
         torque; drehmoment; tyre; tyres; tire; tires; reifen; pneu; pneus; wheel; \
         wheels; redline; capacity; displacement; hubraum; bore; stroke; price; preis; \
         prix; prezzo; precio; year; model year; model; modell; baujahr; bj; jahr; \
         mileage; consumption; verbrauch; oil; wheelbase; circumference; umfang; \
         diameter; page; seite; type; typ",
    ),
    (
        Meaning::Stage,
        "primary; primary drive; primary ratio; primar; primartrieb; primary reduction; \
         primarubersetzung; transfer; transfer box; transfer case; transfer gear; \
         transfer gears; verteilergetriebe; high range; low range; secondary; \
         secondary drive; sekundarubersetzung; chain; sprocket; sprockets; drop gear; \
         drop gears; hub reduction; hub reductions; portal; portals; speedo; \
         speedometer; tacho; head gear; head gears; input gear; input gears; \
         constant pinion; constant mesh; pto; reductor; boite de transfert",
    ),
    (
        Meaning::Unit,
        "mph; km/h; kmh; kph; kmph; m/s; rpm; r/min; rev/min; tr/min; u/min; t/min; \
         g/min; o/min; obr/min; min; km; miles; mi; mm; cm; kg; kgs; lb; lbs; lbft; \
         nm; mkg; kgm; mdan; hp; bhp; ps; ch; cv; kw; cc; ccm; cui; l; litre; \
         litres; liter; ltr; litros; inch; inches; mpg; percent; prozent; v; sec; \
         seconds; s; secs; pc; valve; door; doors; years; owners",
    ),
    (
        Meaning::Money,
        "eur; euro; euros; gbp; usd; chf; pln; sek; pounds; dollars; quid",
    ),
    (
        Meaning::And,
        "and; und; et; e; y; en; och; i; oraz; or; oder; ou; и",
    ),
    (
        Meaning::To,
        "to; zu; bis; till; do; tot; through; thru; auf; a",
    ),
    (Meaning::Per, "per; pro; at; bei; par; je; @; przy"),
    (Meaning::For, "for; fur; fuer; pour; para; voor; on"),
    (
        Meaning::Direct,
        "direct; direct drive; direkt; directe; prise directe; presa diretta; directa",
    ),
    (
        Meaning::Filler,
        "drive; the; of; is; are; was; with; by; from; in; has; mit; von; der; \
         die; das; ist; im; de; des; du; la; le; les; el; il; al; avec; con; com; no; \
         nr; approx; ca; all; alle; one; its; z; x; neutral; n; synchro; synchromesh; \
         rear; front; main; box; value; standard; optional; option; early; \
         late",
    ),
];

static MEANINGS: LazyLock<BTreeMap<&str, Meaning>> = LazyLock::new(|| {
    let phrases = |(meaning, list): &(Meaning, &'static str)| {
        let meaning = *meaning;
        list.split("; ").map(move |phrase| (phrase, meaning))
    };
    VOCABULARY.iter().flat_map(phrases).collect()
});

/// The meaning of `phrase`: one word, or several with single blanks, as they were written.
///
/// Roman numerals and a few letters are gears only as capitals.
pub(super) fn meaning(phrase: &str) -> Option<Meaning> {
    let capital = match phrase {
        "C" => Some(Tag::Crawler),
        "F" | "HA" | "AA" => Some(Tag::Final),
        "L" => Some(Tag::Low),
        "H" => Some(Tag::High),
        _ => roman(phrase).map(Tag::Gear),
    };
    let in_any_case = || MEANINGS.get(folded(phrase).as_str()).copied();
    capital.map(Meaning::Tag).or_else(in_any_case)
}

/// The number of a Roman numeral up to twelve, in capitals.
fn roman(word: &str) -> Option<u8> {
    let at = NUMERALS.iter().position(|numeral| *numeral == word)?;
    u8::try_from(at + 1).ok()
}

/// Whether `letters` behind a number make it an ordinal: `1st`, `2e`, `3ª`.
pub(super) fn is_ordinal_suffix(letters: &str) -> bool {
    const SUFFIXES: &str = "st nd rd th e er ere eme ieme re me de nde nd a o ª º ter te tes er es \
                            i я й";
    SUFFIXES.split(' ').any(|suffix| suffix == folded(letters))
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
        for phrase in MEANINGS.keys() {
            assert!(phrase.split(' ').count() <= LONGEST_PHRASE, "{phrase}");
        }
    }

    #[test]
    fn every_phrase_means_one_thing_and_is_spelled_as_it_is_looked_up() {
        let mut known = BTreeMap::new();
        for (meaning, list) in VOCABULARY {
            for phrase in list.split("; ") {
                assert_eq!(folded(phrase), phrase);
                assert!(known.insert(phrase, meaning).is_none(), "{phrase}");
            }
        }
    }
}
