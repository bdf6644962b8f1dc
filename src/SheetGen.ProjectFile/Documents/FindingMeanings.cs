using SheetGen.Model.Results;

namespace SheetGen.ProjectFile.Documents;

/// <summary>What each code of a finding means and what can be done, for docs/problems.md.</summary>
public static class FindingMeanings
{
    /// <summary>A code, its severity as a word, its meaning and remedy.</summary>
    public sealed record Entry(string Code, string Severity, string Meaning, string Remedy);

    /// <summary>All codes, once each.</summary>
    public static IReadOnlyList<Entry> All { get; } =
    [
        new(FindingCode.NailNail, "error", "Two holes come nearer to one another than `clearance.nail`, drift included.",
            "Do not drill the unresolved one of the two. Try what *would help* names: a wider redirect, another length, other rows or columns."),
        new(FindingCode.NailObstruction, "error", "A hole comes nearer to an obstruction than its clearance.", "As above; or verify where the obstruction stands, and give its true place."),
        new(FindingCode.NailBoundary, "error", "A hole comes nearer to a boundary than `clearance.boundary`.", "Shorten or turn the nail, or let the owner's easement be given."),
        new(FindingCode.NailFace, "error", "A hole comes out of its own wall's face or another's.", "Shorten or turn the nail."),
        new(FindingCode.Cover, "error",
            "A stretch of the face has no nail near enough: none within half the spacing along the wall, the first too deep below the top, the last too high above the bottom, or two rows too far apart. "
            + "A wall, a leg between two corners or a part of a section that is too narrow for any head is told so too, with what it lacks.",
            "Change the grid, the profile, the closed stretch or the pin that the message names; where the face is too narrow, move the corner or the wall's end or lower `edge_min` or `corner_clear`; or let the engineer accept it (`accept`)."),
        new(FindingCode.Unresolved, "error", "A nail for which no place and direction within the rules was found; it stands at its grid place and is marked DO NOT DRILL.", "Try what *would help* names, or have the engineer decide."),
        new(FindingCode.Edge, "error", "A head stands off the face, or nearer than `edge_min` to its outline or an opening, or nearer than `corner_clear` to a corner.", "Move the pin or the edited nail."),
        new(FindingCode.Spacing, "error", "Two heads of a row, or on two sides of a section's limit, stand nearer than `min_gap`; or a verification test nail stands too near to another head.", "Move the pin or the edited nail."),
        new(FindingCode.DuplicateHead, "error", "Two heads stand on one another.", "Remove one of the two."),
        new(FindingCode.Hole, "error", "A hole is not the one that its printed figures give.", "The program is at fault: please report it."),
        new(FindingCode.NoNailHeight, "notice", "A stretch where top and bottom are less than twice `edge_min` apart: no nail fits, and cover is not asked for. The run's summary names sections that have no nail at all.", "Nothing, if the wall is meant to be so low there; else mend the profile."),
        new(FindingCode.NotedRedirect, "notice", "A nail turned beyond `redirect.field_tolerance`.", "The engineer decides on it before letting; the sheets call it out."),
        new(FindingCode.LeftOut, "notice", "A grid station without a nail, and why.", "Nothing: neighbours cover it, or the project file leaves it out."),
        new(FindingCode.TestNail, "warning", "A verification test nail that found no place clear of everything.", "The engineer chooses where it goes."),
        new(FindingCode.Load, "warning", "A changed nail that carries more, or resists less, than the engineer's values allow.", "Lengthen it, or add a nail as the message says."),
        new(FindingCode.Incomplete, "warning", "A quantity, sum or price that stands for less than it should, and the key that is missing.", "Add the key."),
        new(FindingCode.Guidance, "warning or notice", "A value outside of what is usual, with its published source; or what another choice would save.", "Check the value; nothing, if it is meant."),
        new(FindingCode.Sheet, "warning or error", "Something that a sheet could not show as it should.", "Choose another scale or sheet size, or read it in the table that the message names."),
    ];
}
