using System.Security.Cryptography;
using System.Text;
using SheetGen.Layout.Placing;
using SheetGen.Layout.Revisions;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Cli;

/// <summary>
/// A copy of a project file from which the next build gives the edited layout again: the changed nails are fixed, and of the others those
/// that a new search would place otherwise.
/// </summary>
/// <param name="Text">Text of the copy.</param>
/// <param name="Input">The project as the copy states it.</param>
/// <param name="Layout">What building the copy gives, changed nails that are too close marked as not to be drilled; where that is not the edited layout, the edited layout.</param>
/// <param name="Notes">What the copy cannot keep, a sentence each.</param>
public sealed record RevisedProject(string Text, Input Input, NailLayout Layout, IReadOnlyList<string> Notes)
{
    /// <summary>Rounds in which nails that a new search moves are fixed too; at the last one all of them.</summary>
    private const int Rounds = 5;

    /// <summary>Null where the file's text cannot be changed.</summary>
    public static RevisedProject? Make(string file, Input input, NailLayout before, EditedLayout edited, string where, StageDisplay display)
    {
        (IReadOnlyList<FixedNail> changed, IReadOnlyList<string> notPinned) = EditedPins.Of(input.Project, before, edited);
        ReadResult read = ProjectReader.Read(file);
        var kept = new List<FixedNail>();
        List<string> notes = [.. notPinned.Select(m => $"{m} is a verification test nail: the copy of the project file cannot fix it, and the next build places it anew")];
        for (int round = 1; ; round++)
        {
            string? text = FixedBlock.Put(read, input.Project,
                [($"Nails changed {where}, and those fixed before.", changed), ("Nails that a new search would place otherwise; delete them to let it.", kept)]);
            if (text is null)
                return null;
            Input now = input with
            {
                Project = input.Project with { FixedNails = [.. changed, .. kept], InputHash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text))) },
            };
            display.Stage("building the copy of the project file");
            NailLayout built = Placer.Place(now.Project, new PlacingOptions(false), display);
            IReadOnlyList<string> unlike = EditedPins.Unlike(edited.Layout, built);
            if (unlike.Count == 0)
                return new RevisedProject(text, now, EditedLayout.Undecided(now.Project, built, edited.Changed), notes);
            IReadOnlyList<FixedNail> missing = EditedPins.Missing(edited, built);
            // A pin that is there already and is not kept will not be kept by repeating it.
            missing = [.. missing.Where(m => !changed.Concat(kept).Any(p => p.Wall == m.Wall && p.Row == m.Row && p.Along == m.Along))];
            if (round == Rounds || missing.Count == 0)
            {
                notes.Add($"the next build will not give {string.Join(", ", unlike.Take(8))}{(unlike.Count > 8 ? $" and {unlike.Count - 8} more" : "")} as on the drawing: the set was written from the drawing");
                return new RevisedProject(text, now, edited.Layout, notes);
            }
            kept.AddRange(round + 1 == Rounds ? EditedPins.Missing(edited, before with { Nails = [] }).Where(m => !changed.Any(p => p.Wall == m.Wall && p.Row == m.Row && p.Along == m.Along) && !kept.Contains(m)) : missing);
        }
    }
}
