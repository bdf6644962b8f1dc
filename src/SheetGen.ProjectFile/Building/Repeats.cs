using System.Globalization;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Building;

/// <summary>Obstructions that stand several times along the layout line.</summary>
internal static class Repeats
{
    /// <summary>Name and distance along the layout line of each; one at 0 where the block repeats nothing.</summary>
    public static IReadOnlyList<(string Name, double Shift)> Of(MapItem map)
    {
        string name = map.Text("name") ?? "";
        if (map.Map("repeat") is not { } repeat || repeat.Number("count") is not { } count || repeat.Number("every") is not { } every)
            return [(name, 0)];
        return [.. Enumerable.Range(0, (int)count).Select(i => (Numbered(name, i), i * every))];
    }

    /// <summary>S1, S2, S3; a name that does not end in a number gets one: Shaft-1, Shaft-2.</summary>
    private static string Numbered(string name, int index)
    {
        string digits = new([.. name.Reverse().TakeWhile(char.IsAsciiDigit).Reverse()]);
        if (digits.Length is 0 or > 6)
            return FormattableString.Invariant($"{name}-{index + 1}");
        int first = int.Parse(digits, CultureInfo.InvariantCulture);
        return name[..^digits.Length] + (first + index).ToString(CultureInfo.InvariantCulture).PadLeft(digits.Length, '0');
    }
}
