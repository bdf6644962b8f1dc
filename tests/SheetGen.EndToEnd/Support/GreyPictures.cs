using System.Globalization;
using System.Text;
using Xunit;

namespace SheetGen.EndToEnd.Support;

/// <summary>Small grey pictures, one below the other in a binary PGM file, and how far two of them differ.</summary>
internal static class GreyPictures
{
    /// <summary>Width of a page, pixels: enough to see what stands where, too little for a font's own shapes.</summary>
    private const int Width = 120;

    /// <summary>Grey steps (of 255) by which the pages may differ on average, for fonts and renderers are not the same everywhere.</summary>
    private const double MostMean = 2;

    /// <summary>Grey steps above which a pixel is another one, and the share of such pixels that a page may have.</summary>
    private const int OtherPixel = 70;
    private const double MostOthers = 0.003;

    /// <summary>Draws the pages of a PDF file and writes them one below the other.</summary>
    public static void Draw(string pdf, string picture)
    {
        string folder = Path.Combine(Path.GetDirectoryName(picture)!, "pages");
        Directory.CreateDirectory(folder);
        (int code, _, string error) = OutsideTool.Run("pdftoppm", null, "-gray", "-scale-to-x", Width.ToString(CultureInfo.InvariantCulture), "-scale-to-y", "-1", pdf, Path.Combine(folder, "p"));
        Assert.True(code == 0, error);
        (int Height, byte[] Pixels)[] pages = [.. Directory.GetFiles(folder, "*.pgm").Order(StringComparer.Ordinal).Select(Read)];
        using FileStream file = File.Create(picture);
        file.Write(Encoding.ASCII.GetBytes(FormattableString.Invariant($"P5\n{Width} {pages.Sum(p => p.Height)}\n255\n")));
        foreach ((_, byte[] pixels) in pages)
            file.Write(pixels);
    }

    /// <summary>What tells two files of pages apart; empty where they look the same.</summary>
    /// <param name="pages">Number of pages in each.</param>
    public static IReadOnlyList<string> Differences(string expected, string actual, int pages)
    {
        byte[] a = Read(expected).Pixels, b = Read(actual).Pixels;
        if (a.Length != b.Length)
            return [$"{b.Length / Width} rows of pixels instead of {a.Length / Width}"];
        int size = a.Length / pages;
        var found = new List<string>();
        for (int page = 0; page < pages; page++)
        {
            int[] steps = [.. Enumerable.Range(page * size, size).Select(i => Math.Abs(a[i] - b[i]))];
            double mean = steps.Average(), others = (double)steps.Count(s => s > OtherPixel) / size;
            if (mean > MostMean || others > MostOthers)
                found.Add(FormattableString.Invariant($"page {page + 1} looks other: {mean:0.00} grey steps on average, {others:0.00%} of the pixels"));
        }
        return found;
    }

    private static (int Height, byte[] Pixels) Read(string file)
    {
        byte[] bytes = File.ReadAllBytes(file);
        string[] head = Encoding.ASCII.GetString(bytes, 0, Math.Min(64, bytes.Length)).Split((char[])[' ', '\n'], 5);
        Assert.True(head[0] == "P5" && head[1] == Width.ToString(CultureInfo.InvariantCulture), file);
        int height = int.Parse(head[2], CultureInfo.InvariantCulture);
        return (height, bytes[^(Width * height)..]);
    }
}
