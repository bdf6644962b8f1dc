namespace SheetGen.Layout.Quantities;

/// <summary>Tolerances of the take-off, each with its reason. Equal lengths and places are those of <see cref="Rows.Tolerance"/>.</summary>
internal static class QuantityTolerance
{
    /// <summary>A piece of an overlay of polygons with less area than this, in square project units, is a seam of rounding.</summary>
    public const double NoArea = 1e-9;

    /// <summary>Share of an area by which two sums of polygons differ by rounding.</summary>
    public const double AreaRounding = 1e-9;

    /// <summary>An area that differs by less than this share is the same: cells of heads are cut from clipped outlines, which lose more than sums do.</summary>
    public const double SameArea = 1e-6;

    /// <summary>A mitre that leans less than this for each unit of height is plumb: no height would be found by dividing by it.</summary>
    public const double NoLean = 1e-12;

    /// <summary>Least share of a nail's load along its row that a load is divided by: a nail along the face takes none, and its load has no end but stays a number.</summary>
    public const double LeastSquare = 1e-6;

    /// <summary>Share by which a length and the distances of rounded coordinates may differ, summed over all nails.</summary>
    public const double SecondLength = 1e-7;

    /// <summary>Share by which one volume summed nail by nail and hole by hole may differ: rounding.</summary>
    public const double SecondVolume = 1e-9;

    /// <summary>Share by which a face and a sum of narrow columns may differ: a column that holds a bend of the profile, or an arc between two chords.</summary>
    public const double SecondColumns = 0.002;

    /// <summary>Share by which tabled weights of bars and their nominal areas times the density of steel may differ: tables round both.</summary>
    public const double SecondSteel = 0.01;

    /// <summary>Share of the spacing by which a gap that nobody would set out otherwise may differ from it: a face off a curved layout line does so much.</summary>
    public const double TypicalGap = 0.01;

    /// <summary>Share by which the face and the sum of its lifts may differ: overlays of polygons.</summary>
    public const double SecondArea = 1e-6;
}
