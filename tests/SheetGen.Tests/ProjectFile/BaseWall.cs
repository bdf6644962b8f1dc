using SheetGen.Model;
using SheetGen.ProjectFile;
using Xunit;

namespace SheetGen.Tests.ProjectFile;

/// <summary>The small project file that tests change.</summary>
internal static class BaseWall
{
    public const string FileName = "wall.yaml";

    public static string Text { get; } = Repository.Read("tests", "SheetGen.Tests", "Cases", "base-wall.yaml").ReplaceLineEndings("\n");

    /// <summary>The base with one text, which stands in it exactly once, replaced.</summary>
    public static string With(string from, string to) => Replace(Text, from, to);

    public static string Replace(string text, string from, string to)
    {
        Assert.Equal(2, text.Split(from).Length);
        return text.Replace(from, to, StringComparison.Ordinal);
    }

    /// <summary>The project of a text that has no problems.</summary>
    public static WallProject Read(string text)
    {
        ReadResult result = ProjectReader.ReadText(text, FileName);
        Assert.Equal([], result.Problems.Select(ProblemPrinter.Plain));
        return result.Project!;
    }

    /// <summary>The project of a text with nothing but warnings of the given code.</summary>
    public static WallProject ReadWarned(string text, string code)
    {
        ReadResult result = ProjectReader.ReadText(text, FileName);
        Assert.Equal([code], result.Problems.Select(p => p.Code).Distinct());
        return result.Project!;
    }

    public static string[] Problems(string text) =>
        [.. ProjectReader.ReadText(text, FileName).Problems.Select(ProblemPrinter.Plain)];
}
