using SheetGen.Drawing.Sections;
using SheetGen.Drawing.Set;
using SheetGen.Drawing.Templating;
using SheetGen.Model;

namespace SheetGen.Drawing.Details;

/// <summary>
/// The typical details, drawn from the project's figures and not to scale. Facts of the trade in them are common practice, no source.
/// </summary>
public static class DetailViews
{
    /// <summary>Those that the project has a use for, in the order in which they are numbered.</summary>
    public static IReadOnlyList<DetailView> All(DrawingContext context)
    {
        var data = new DetailData(context);
        WallProject project = context.Project;
        var details = new List<DetailView>();
        foreach (HeadKind head in data.Heads)
        {
            string title = data.Heads.Count == 1 ? context.Say(Phrase.DetailHead) : context.Say(Phrase.DetailHeadOf, head.Zones);
            details.Add(new(title, pen => NailDetails.Head(context, data, head, pen)) { Lean = head.Batter });
        }
        details.Add(new(context.Say(Phrase.DetailHole), pen => NailDetails.Hole(context, data, pen)));
        foreach (Wall wall in project.Walls.DistinctBy(w => w.Facing))
        {
            string kind = wall.Facing is { Kind: not FacingKind.None } f
                ? context.Say(SectionLabels.FacingWords(f.Kind), "").TrimEnd()
                : wall.Name.ToUpperInvariant();
            details.Add(new(context.Say(Phrase.DetailFacing, kind), pen => FacingDetails.Facing(context, data, wall, pen)));
        }
        details.Add(new(context.Say(Phrase.DetailStripLap), pen => DrainDetails.Lap(context, data, pen)));
        details.Add(new(context.Say(Phrase.DetailOutlet), pen => DrainDetails.Outlet(context, data, pen)));
        details.Add(new(context.Say(Phrase.DetailJoint), pen => FacingDetails.Joint(context, data, pen)));
        details.Add(new(context.Say(Phrase.DetailEnd), pen => EdgeDetails.End(context, data, pen)));
        if (project.Walls.Any(w => new Face(w).Legs.Count > 1))
            details.Add(new(context.Say(Phrase.DetailCorner), pen => EdgeDetails.Corner(context, data, pen)));
        if (project.Walls.Any(w => w.Openings.Count > 0))
            details.Add(new(context.Say(Phrase.DetailOpening), pen => EdgeDetails.Opening(context, data, pen)));
        if (data.Sections.Any(s => s.Section.TestNails.Verification > 0))
            details.Add(new(context.Say(Phrase.DetailTest), pen => NailDetails.Test(context, data, pen)));
        return details;
    }
}

/// <summary>A detail before it is drawn.</summary>
public sealed record DetailView(string Title, Action<DetailPen> Draw)
{
    /// <summary>Degrees by which its picture leans to the right.</summary>
    public double Lean { get; init; }
}
