using SheetGen.Drawing.Templating;
using SheetGen.Model;
using SheetGen.Model.Results;

namespace SheetGen.Drawing.Set;

/// <summary>
/// The words for the side to which a nail's tip lies: LEFT and RIGHT for a person in front of the wall who faces it, and the same by
/// stations. The direction of the drawing never changes the words.
/// </summary>
public static class Sides
{
    /// <summary>LEFT, RIGHT, or empty for a nail perpendicular to the face; in English whatever the sheets' language, for other programs.</summary>
    /// <param name="splay">Degrees, positive up-station.</param>
    public static string Of(Wall wall, double splay)
    {
        if (splay == 0)
            return "";
        bool upStationIsLeft = wall.RetainedSide == Turn.Right;
        return splay > 0 == upStationIsLeft ? "LEFT" : "RIGHT";
    }

    public static string ByStation(double splay) => splay == 0 ? "" : splay > 0 ? "UP-STA" : "DN-STA";

    /// <summary>The side in the sheets' language.</summary>
    public static string Words(DrawingContext context, Wall wall, double splay) =>
        splay == 0 ? "" : context.Say(Of(wall, splay) == "LEFT" ? Phrase.Left : Phrase.Right);

    /// <summary>The direction by stations in the sheets' language.</summary>
    public static string StationWords(DrawingContext context, double splay) =>
        splay == 0 ? "" : context.Say(splay > 0 ? Phrase.UpStation : Phrase.DownStation);

    /// <summary>+1 where stations grow to the right on the drawing, -1 where they grow to the left.</summary>
    public static int DrawingSign(Wall wall, bool fromBehind) => wall.RetainedSide == Turn.Right != fromBehind ? -1 : 1;

    public static double InclinationChange(Nail nail) => nail.Inclination - nail.Section.Inclination;
}
