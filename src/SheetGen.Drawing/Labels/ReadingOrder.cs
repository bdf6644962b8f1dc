using System.Globalization;

namespace SheetGen.Drawing.Labels;

/// <summary>
/// The order in which the letters of a line are drawn from left to right, where some of them (Hebrew) are read from right to left: Unicode Standard Annex 9,
/// for a line that begins on the left, without its control characters.
/// </summary>
public static class ReadingOrder
{
    private const string Brackets = "()[]{}<>«»", Separators = "+-,./:", Terminators = "#$%°±€£";

    private enum Kind
    {
        Left,
        Right,
        Number,
        Separator,
        Terminator,
        Neutral,
    }

    /// <summary>The text as it is drawn; itself where nothing in it is read from right to left.</summary>
    public static string Drawn(string text)
    {
        if (!text.Any(IsRightToLeft))
            return text;
        var letters = new List<string>();
        for (TextElementEnumerator of = StringInfo.GetTextElementEnumerator(text); of.MoveNext();)
            letters.Add(of.GetTextElement());
        Kind[] kinds = [.. letters.Select(l => Of(l[0]))];
        Numbers(kinds);
        Pairs(letters, kinds);
        Neutrals(kinds);
        int[] levels = [.. kinds.Select(k => k switch { Kind.Left => 0, Kind.Right => 1, _ => 2 })];
        for (int i = 0; i < letters.Count; i++)
        {
            if (levels[i] == 1 && Brackets.IndexOf(letters[i][0], StringComparison.Ordinal) is >= 0 and int at)
                letters[i] = Brackets[at ^ 1].ToString();
        }
        for (int level = 2; level > 0; level--)
            Turn(letters, levels, level);
        return string.Concat(letters);
    }

    private static bool IsRightToLeft(char c) => c is >= '\u0590' and <= '\u05FF' or >= '\uFB1D' and <= '\uFB4F';

    private static Kind Of(char c) =>
        IsRightToLeft(c) ? Kind.Right
        : char.IsAsciiDigit(c) ? Kind.Number
        : char.IsLetter(c) ? Kind.Left
        : Separators.Contains(c, StringComparison.Ordinal) ? Kind.Separator
        : Terminators.Contains(c, StringComparison.Ordinal) ? Kind.Terminator
        : Kind.Neutral;

    /// <summary>Rules W4 to W7: one separator within a number and the signs beside one belong to it; a number after letters from the left goes with them.</summary>
    private static void Numbers(Kind[] kinds)
    {
        for (int i = 1; i + 1 < kinds.Length; i++)
        {
            if (kinds[i] == Kind.Separator && kinds[i - 1] == Kind.Number && kinds[i + 1] == Kind.Number)
                kinds[i] = Kind.Number;
        }
        for (int i = 1; i < kinds.Length; i++)
        {
            if (kinds[i] == Kind.Terminator && kinds[i - 1] == Kind.Number)
                kinds[i] = Kind.Number;
        }
        for (int i = kinds.Length - 2; i >= 0; i--)
        {
            if (kinds[i] == Kind.Terminator && kinds[i + 1] == Kind.Number)
                kinds[i] = Kind.Number;
        }
        Kind strong = Kind.Left;
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] is Kind.Left or Kind.Right)
                strong = kinds[i];
            else if (kinds[i] is Kind.Separator or Kind.Terminator)
                kinds[i] = Kind.Neutral;
            else if (kinds[i] == Kind.Number && strong == Kind.Left)
                kinds[i] = Kind.Left;
        }
    }

    /// <summary>Rule N0: a pair of brackets goes with what it holds.</summary>
    private static void Pairs(List<string> letters, Kind[] kinds)
    {
        var open = new Stack<int>();
        var pairs = new List<(int From, int To)>();
        for (int i = 0; i < kinds.Length; i++)
        {
            int at = kinds[i] == Kind.Neutral ? "()[]{}".IndexOf(letters[i][0], StringComparison.Ordinal) : -1;
            if (at >= 0 && at % 2 == 0)
                open.Push(i);
            else if (at > 0 && open.Any(o => letters[o][0] == Brackets[at - 1]))
            {
                while (letters[open.Peek()][0] != Brackets[at - 1])
                    open.Pop();
                pairs.Add((open.Pop(), i));
            }
        }
        foreach ((int from, int to) in pairs.OrderBy(p => p.From))
        {
            Kind[] inside = kinds[(from + 1)..to];
            bool holdsRight = inside.Any(k => k is Kind.Right or Kind.Number);
            if (inside.Contains(Kind.Left))
                kinds[from] = kinds[to] = Kind.Left;
            else if (holdsRight)
                kinds[from] = kinds[to] = kinds[..from].LastOrDefault(k => k != Kind.Neutral, Kind.Left) == Kind.Left ? Kind.Left : Kind.Right;
        }
    }

    /// <summary>Rules N1 and N2: what stands between letters from the right goes with them, all else from the left.</summary>
    private static void Neutrals(Kind[] kinds)
    {
        for (int i = 0; i < kinds.Length; i++)
        {
            if (kinds[i] != Kind.Neutral)
                continue;
            int end = i;
            while (end < kinds.Length && kinds[end] == Kind.Neutral)
                end++;
            bool within = i > 0 && end < kinds.Length && kinds[i - 1] != Kind.Left && kinds[end] != Kind.Left;
            Array.Fill(kinds, within ? Kind.Right : Kind.Left, i, end - i);
        }
    }

    /// <summary>Rule L2: turns each stretch of letters of a level and higher.</summary>
    private static void Turn(List<string> letters, int[] levels, int level)
    {
        for (int i = 0; i < levels.Length; i++)
        {
            int end = i;
            while (end < levels.Length && levels[end] >= level)
                end++;
            if (end > i)
            {
                letters.Reverse(i, end - i);
                Array.Reverse(levels, i, end - i);
                i = end;
            }
        }
    }
}
