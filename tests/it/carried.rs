//! Does a picture carry the project as far as it shows it, and give it back, whatever the project?

use crate::support::projects::{any_project, renumbered};
use crate::support::window::{camper_van, every_project};
use egui::Color32;
use layshaft::draw::palette::{Palette, Theme};
use layshaft::project::{
    Candidate, Candidates, Drops, KnownFuel, Livery, Note, PageForm, PictureError, PictureWidth,
    Project, SetChecks, SetId, SetTechnical, TechnicalData, View, WriteUp, format, text_in_picture,
};
use layshaft::sheet::page::{Page, PageError, Picture};
use layshaft::workshop::Workshop;
use proptest::prelude::*;
use std::collections::BTreeSet;

/// The file of a page's picture; the pixels do not matter.
fn file_of(page: &Page) -> Vec<u8> {
    page.png(&Picture::new(1, 1)).unwrap()
}

fn real_file(project: &Project) -> Vec<u8> {
    real_file_of(&Page::of(project).unwrap())
}

fn real_file_of(page: &Page) -> Vec<u8> {
    page.png(&page.picture().unwrap()).unwrap()
}

fn opened(file: &[u8]) -> Project {
    format::read(&text_in_picture(file).unwrap()).unwrap()
}

fn is_shown(project: &Project, candidate: &Candidate) -> bool {
    candidate.visible && !project.write_up.left_out.contains(&candidate.id)
}

/// What a picture of the project shows, put together anew, with identities as reading gives them.
fn as_shown(project: &Project) -> Project {
    let shown: Vec<&Candidate> = project
        .sets
        .iter()
        .filter(|candidate| is_shown(project, candidate))
        .collect();
    let place = |id: SetId| shown.iter().position(|candidate| candidate.id == id);
    let sets = shown.iter();
    let sets = sets.map(|c| ((*c.set).clone(), true, Some(c.livery)));
    let baseline = place(project.sets.baseline().id).unwrap_or(0);
    let drops = match project.write_up.drops {
        Drops::Of(id) => place(id).map_or(Drops::Usual, |place| {
            Drops::Of(SetId(u32::try_from(place).unwrap() + 1))
        }),
        drops => drops,
    };
    // Engine and vehicle go along where a view shows them, and what is checked where its view does.
    let needs_motion = project.write_up.views.need_motion();
    let has_checks = project.write_up.views.has(View::Speedometer);
    let of_sets = shown.iter().map(|candidate| {
        let own = candidate.technical.clone();
        let motion = if needs_motion {
            own.clone()
        } else {
            SetTechnical::default()
        };
        let checks = if has_checks {
            own.checks
        } else {
            SetChecks::default()
        };
        SetTechnical { checks, ..motion }
    });
    let of_sets = of_sets.collect();
    let known_fuel = project.technical.known_fuel.and_then(|known| {
        let place = u32::try_from(place(known.set)?).unwrap();
        let set = SetId(place + 1);
        Some(KnownFuel { set, ..known })
    });
    let all = project.technical.clone();
    let motion = needs_motion.then(|| TechnicalData {
        known_fuel,
        ..all.clone()
    });
    let checked = if has_checks {
        all
    } else {
        TechnicalData::default()
    };
    let technical = TechnicalData {
        speedometer: checked.speedometer,
        limits: checked.limits,
        second_axle: checked.second_axle,
        ..motion.unwrap_or_default()
    };
    renumbered(&Project {
        note: if project.write_up.with_note {
            project.note.clone()
        } else {
            Note::default()
        },
        write_up: WriteUp {
            left_out: BTreeSet::new(),
            drops,
            ..project.write_up.clone()
        },
        technical,
        // Nothing of the bench is to be seen in a picture of gear sets.
        workshop: Workshop::default(),
        sets: Candidates::with_liveries(sets.collect(), baseline)
            .unwrap()
            .with_technical(of_sets),
        ..project.clone()
    })
}

proptest! {
    #[test]
    fn a_picture_of_any_project_opens_to_an_equal_one_as_far_as_it_shows(project in any_project()) {
        let page = match Page::of(&project) {
            Err(refused) => {
                prop_assert_eq!(refused, PageError::NoSet);
                return Ok(());
            }
            Ok(page) => page,
        };
        let file = file_of(&page);
        if project.write_up.carries_project {
            prop_assert_eq!(opened(&file), as_shown(&project));
        } else {
            prop_assert_eq!(text_in_picture(&file), Err(PictureError::NoProject));
        }
    }

    #[test]
    fn what_came_out_of_a_picture_goes_into_the_next_one_unchanged(project in any_project()) {
        if let (Ok(page), true) = (Page::of(&project), project.write_up.carries_project) {
            let file = file_of(&page);
            let again = file_of(&Page::of(&opened(&file)).unwrap());
            prop_assert!(again == file);
        }
    }

    #[test]
    fn damage_anywhere_gives_the_same_project_or_a_sentence(
        damage in prop::collection::vec((any::<prop::sample::Index>(), 1_u8..), 1..4),
    ) {
        let mut file = file_of(&Page::of(&camper_van()).unwrap());
        for (at, flipped) in damage {
            let at = at.index(file.len());
            file[at] ^= flipped;
        }
        match text_in_picture(&file) {
            Ok(text) => prop_assert_eq!(format::read(&text).unwrap(), as_shown(&camper_van())),
            Err(problem) => prop_assert!(problem.to_string().contains("picture")),
        }
    }
}

/// Every choice of sets of a project, each in the project's order.
fn subsets(project: &Project) -> Vec<Vec<SetId>> {
    let ids: Vec<SetId> = project.sets.iter().map(|c| c.id).collect();
    let chosen = |bits: u32| {
        let numbered = (0..).zip(&ids);
        let chosen = numbered.filter(|(at, _)| bits & (1 << at) != 0);
        chosen.map(|(_, id)| *id).collect()
    };
    (1..1 << ids.len()).map(chosen).collect()
}

/// Whether the page of what a page carries is the same page: its pixels, and what it carries in turn.
fn comes_again(page: &Page) -> bool {
    let file = file_of(page);
    let again = Page::of(&opened(&file)).unwrap();
    file_of(&again) == file && again.picture() == page.picture()
}

#[test]
fn without_its_first_set_the_picture_of_an_opened_picture_is_the_same() {
    for (name, mut project) in every_project() {
        project.write_up.width = PictureWidth::from_px(800).unwrap();
        // Those behind it move up, and the first of them is the baseline; where there are none, it stays.
        let mut sets = project.sets.iter().map(|c| c.id).collect::<Vec<_>>();
        let shown = sets.split_off(usize::from(sets.len() > 1));
        let page = Page::with_sets(&project, &shown).unwrap();
        assert!(comes_again(&page), "{name}");
    }
}

#[test]
fn in_every_form_the_picture_of_an_opened_picture_is_the_same_to_the_byte() {
    for form in PageForm::ALL {
        let mut project = camper_van();
        project.write_up.form = form;
        let file = real_file(&project);
        assert!(real_file(&opened(&file)) == file, "{form:?}");
    }
}

/// Where a set that is not first has been alone or before the others, its picture had it in the colour
/// of another.
#[test]
fn a_set_has_the_colour_of_its_own_in_a_picture_of_fewer_sets_and_when_that_is_opened() {
    let mut project = camper_van();
    project.write_up.with_table = false;
    let ids: Vec<SetId> = project.sets.iter().map(|c| c.id).collect();
    let page = Page::with_sets(&project, &[ids[0], ids[2]]).unwrap();
    let carried = opened(&real_file_of(&page));
    let palette = Palette::of(Theme::Light);
    let green = palette.set(Livery::Third);
    let [orange, blue] = [Livery::Second, Livery::First].map(|livery| palette.set(livery));
    for picture in [page, Page::of(&carried).unwrap()].map(|page| page.picture().unwrap()) {
        let has = |wanted: Color32| picture.pixels().any(|pixel| pixel.0 == wanted.to_array());
        assert!(has(blue) && has(green) && !has(orange));
    }
}

proptest! {
    // Every case paints two pictures.
    #![proptest_config(ProptestConfig::with_cases(6))]

    #[test]
    fn a_picture_of_any_sets_of_any_project_makes_the_same_picture_again(
        project in any_project(),
        which in any::<prop::sample::Index>(),
    ) {
        let mut project = project;
        project.write_up.carries_project = true;
        project.write_up.width = PictureWidth::from_px(800).unwrap();
        project.note = Note::default();
        let subsets = subsets(&project);
        let shown = &subsets[which.index(subsets.len())];
        let page = Page::with_sets(&project, shown).unwrap();
        prop_assert!(comes_again(&page));
    }
}

#[test]
fn a_set_that_the_command_line_chose_is_the_only_one_in_the_picture() {
    let project = camper_van();
    let third = project.sets.iter().nth(2).unwrap();
    let page = Page::with_sets(&project, &[third.id]).unwrap();
    let text = text_in_picture(&file_of(&page)).unwrap();
    assert!(text.contains(third.set.name.as_str()));
    for other in project.sets.iter().filter(|other| other.id != third.id) {
        assert!(!text.contains(other.set.name.as_str()), "{text}");
    }
}

#[test]
fn the_pixels_are_the_same_with_the_project_and_without() {
    let with = real_file(&camper_van());
    let mut project = camper_van();
    project.write_up.carries_project = false;
    let without = real_file(&project);
    let pixels = |file: &[u8]| image::load_from_memory(file).unwrap().into_rgb8();
    assert!(pixels(&with) == pixels(&without));
    let text = text_in_picture(&with).unwrap();
    assert!(with.len() - without.len() < text.len() + 100);
}
