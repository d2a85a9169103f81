//! `layshaft chart`: the picture of the write-up, made without a display.

use super::arguments::Arguments;
use super::error::CliError;
use super::flag_row::Group;
use super::flags::Flag;
use super::source::numbered_set;
use super::values::{choice, views};
use super::{PRINTED, output, source};
use crate::analysis::Analysis;
use crate::gearing::quoted;
use crate::project::{Drops, Marks, PageForm, PictureWidth, Project, SetId, View, Views};
use crate::sheet::page::{Page, Sheet};
use crate::workshop::BenchItem;
use std::io::Write;

/// What `--job` calls the plan of what changes.
const PLAN: &str = "plan";

/// The exit code, when the picture is written.
pub(super) fn run(
    arguments: &Arguments,
    stdout: &mut dyn Write,
    stderr: &mut dyn Write,
) -> Result<u8, CliError> {
    let shown = views(arguments)?;
    if arguments.path(Flag::Output)?.is_none() {
        return Err(CliError::NoOutput);
    }
    let out = output::wanted(arguments)?;
    out.check()?;
    let source::Sourced { mut project, notes } = source::project(arguments)?;
    choose(&mut project, arguments)?;
    if shown.is_some() && project.write_up.form != PageForm::Picture {
        return Err(CliError::NotOnPaper(Flag::Show.name()));
    }
    let shown = shown.unwrap_or_else(|| project.write_up.views.clone());
    let drops = drops(&project, arguments)?;
    if drops.is_some() && !shown.has(View::Speed) {
        return Err(CliError::NoDrops(words(&shown)));
    }
    project.write_up.drops = drops.unwrap_or(project.write_up.drops);
    mark(&mut project, arguments)?;
    project.write_up.views = shown.clone();
    let chosen = chosen_sets(&project, arguments)?;
    let analysis = Analysis::of(project);
    if let Some(view) = shown.as_slice().iter().find(|view| view.needs_motion())
        && let Err(reason) = analysis.motion()
    {
        return Err(CliError::no_motion(view.word(), reason.clone()));
    }
    let sheet = sheet(&analysis, arguments)?;
    let page = match chosen {
        Some(chosen) => Page::with_sets(analysis, &chosen)?,
        None => Page::of(analysis)?,
    };
    let page = page.with_sheet(sheet);
    if let Some(Drops::Of(set)) = drops
        && !page.shows(set)
    {
        return Err(CliError::DropsOfUnseen);
    }
    let bytes = page.png(&page.picture()?)?;
    out.write(&bytes, stdout, stderr)?;
    output::notes(stderr, &notes);
    Ok(PRINTED)
}

/// The flags over the project's own choices.
fn choose(project: &mut Project, arguments: &Arguments) -> Result<(), CliError> {
    let choices = &mut project.write_up;
    if let Some(text) = arguments.once(Flag::Page)? {
        let papers = [("a4", PageForm::A4), ("letter", PageForm::Letter)];
        choices.form = choice(Flag::Page, text, &papers)?;
    } else if arguments.has(Flag::Job) {
        choices.form = PageForm::A4;
    } else if arguments
        .first_of(|row| row.group == Group::Output)
        .is_some()
    {
        // Whoever gives no page wants the picture, whatever was last made in the window.
        choices.form = PageForm::Picture;
    }
    if let Some(text) = arguments.once(Flag::Width)? {
        choices.width = width(text)?;
    }
    if let Some(text) = arguments.once(Flag::Theme)? {
        if choices.form != PageForm::Picture {
            return Err(CliError::NotOnPaper(Flag::Theme.name()));
        }
        choices.is_dark = choice(Flag::Theme, text, &[("light", false), ("dark", true)])?;
    }
    choices.with_table &= !arguments.has(Flag::NoTable);
    choices.with_note &= !arguments.has(Flag::NoNote);
    choices.carries_project &= !arguments.has(Flag::NoProject);
    Ok(())
}

/// `steps,effort`.
fn words(views: &Views) -> String {
    let words: Vec<&str> = views.as_slice().iter().map(|view| view.word()).collect();
    words.join(",")
}

/// Whose drops `--drops` wants; none where it is not given.
fn drops(project: &Project, arguments: &Arguments) -> Result<Option<Drops>, CliError> {
    let Some(text) = arguments.once(Flag::Drops)? else {
        return Ok(None);
    };
    if project.write_up.form != PageForm::Picture {
        return Err(CliError::NotOnPaper(Flag::Drops.name()));
    }
    let mut choices = vec![("all", Drops::All), ("none", Drops::Hidden)];
    let sets = project.sets.iter().map(|c| Drops::Of(c.id));
    choices.extend(["1", "2", "3"].into_iter().zip(sets));
    choice(Flag::Drops, text, &choices).map(Some)
}

fn width(text: &str) -> Result<PictureWidth, CliError> {
    let Ok(px) = text.trim().parse::<u64>() else {
        let reason = format!("\"{}\" is not a whole number of pixels", quoted(text));
        return Err(CliError::value(Flag::Width.name(), &reason));
    };
    PictureWidth::from_px(px).map_err(|error| CliError::value(Flag::Width.name(), &error))
}

/// The speeds of `--rpm` and `--speed` instead of those that the project marks.
fn mark(project: &mut Project, arguments: &Arguments) -> Result<(), CliError> {
    let marked = source::marked(arguments, project)?;
    let told = |flag: Flag| move |error| CliError::value(flag.name(), &error);
    project.marked_engine_speeds = Marks::new(marked.engine_speeds).map_err(told(Flag::Rpm))?;
    project.marked_road_speeds = Marks::new(marked.road_speeds).map_err(told(Flag::Speed))?;
    Ok(())
}

/// The sheet of the job that `--job` names, or of the plan; none where it is not given.
fn sheet(analysis: &Analysis, arguments: &Arguments) -> Result<Option<Sheet>, CliError> {
    let Some(text) = arguments.once(Flag::Job)? else {
        return Ok(None);
    };
    if text.trim() == PLAN {
        let sheet = Sheet::of(analysis, BenchItem::Plan);
        return sheet.map(Some).ok_or(CliError::NoPlan);
    }
    let jobs = analysis.project().workshop.jobs();
    let at = text.trim().parse::<usize>().ok();
    let at = at.and_then(|number| number.checked_sub(1));
    let sheet = at.and_then(|at| Sheet::of(analysis, BenchItem::Job(jobs.get(at)?.id)));
    sheet.map(Some).ok_or_else(|| CliError::NoSuchJob {
        number: format!("\"{}\"", quoted(text)),
        present: jobs.len(),
    })
}

/// The sets that `--sets` names, in the project's order; none where it is not given.
fn chosen_sets(project: &Project, arguments: &Arguments) -> Result<Option<Vec<SetId>>, CliError> {
    let Some(text) = arguments.once(Flag::Chosen)? else {
        return Ok(None);
    };
    let mut chosen = Vec::new();
    for item in text.split([',', ' ']) {
        let candidate = numbered_set(project, Flag::Chosen, item)?;
        if !chosen.contains(&candidate.id) {
            chosen.push(candidate.id);
        }
    }
    Ok(Some(chosen))
}
