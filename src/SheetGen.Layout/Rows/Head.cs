using SheetGen.Model.Results;

namespace SheetGen.Layout.Rows;

/// <summary>Where a hole starts on a wall's face: place along the layout line and elevation.</summary>
internal readonly record struct Head(Along Along, Elevation Elevation)
{
    /// <summary>The head of a placed nail.</summary>
    public static Head Of(Nail nail) => new(new Along(nail.Along), new Elevation(nail.Elevation));

    /// <summary>The head that a nail's station and elevation give, as a checker has to read them.</summary>
    public static Head AsStationed(Nail nail) => new(nail.Wall.LayoutLine.AlongOf(new Station(nail.Station)), new Elevation(nail.Elevation));
}
