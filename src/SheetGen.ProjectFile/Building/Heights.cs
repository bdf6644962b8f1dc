using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Pairs of bottom and top elevations.</summary>
internal static class Heights
{
    /// <summary>True where both are given and the top is above the bottom; otherwise that is reported.</summary>
    public static bool Check(MapItem map, string what, ProblemList problems)
    {
        if (map.Number("bottom") is not { } bottom || map.Number("top") is not { } top)
            return false;
        if (top - bottom > Tolerance.Length)
            return true;
        problems.Add(ProblemCodes.TopUnderBottom, map.SpotOf("top"), FormattableString.Invariant($"the top {top} of {what} is not above its bottom {bottom}"), "correct or swap the two", map.SpotOf("bottom"));
        return false;
    }
}
