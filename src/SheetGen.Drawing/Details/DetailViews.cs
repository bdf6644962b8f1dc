using SheetGen.Drawing.Set;

namespace SheetGen.Drawing.Details;

/// <summary>
/// The details, each drawn to scale from the project's figures. Facts of the trade in them are common practice, no source.
/// </summary>
public static class DetailViews
{
    /// <summary>Those that the project has a use for, in the order in which they are numbered.</summary>
    public static IReadOnlyList<DetailView> All(DrawingContext context)
    {
        var data = new DetailData(context);
        return
        [
            .. HeadDetails.All(context, data),
            .. NailDetails.Holes(context, data),
            NailDetails.Bores(context, data),
            .. FacingDetails.All(context, data),
            .. FootDetails.All(context, data),
            .. DrainDetails.All(context, data),
            .. LiftDetails.Joints(context, data),
            .. EndDetails.All(context, data),
            .. CornerDetails.All(context, data),
            .. OpeningDetails.All(context, data),
            .. NailDetails.Tests(context, data),
        ];
    }
}
