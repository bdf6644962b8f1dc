using PdfSharp.Fonts;

namespace SheetGen.Writers.Pdf;

/// <summary>
/// The sheet font, Arimo Regular and Bold, carried in the program: the same sheets on every machine, whatever fonts it has. Its widths are those
/// that the sheets are laid out by.
/// </summary>
public sealed class SheetFonts : IFontResolver
{
    public const string Family = "Sheet Sans";

    private static readonly byte[] Regular = Carried("Arimo-Regular.ttf"), Bold = Carried("Arimo-Bold.ttf");

    /// <summary>What face is used, for the file's metadata.</summary>
    public static string Name => "Arimo";

    /// <summary>The signs that the font lacks among those of a text: a PDF shows an empty box for them.</summary>
    public static IEnumerable<int> Lacking(string text) => text.EnumerateRunes().Select(r => r.Value).Where(c => !FontSigns.Of(Regular).Contains(c)).Distinct();

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? "bold" : "regular");

    public byte[]? GetFont(string faceName) => faceName == "bold" ? Bold : Regular;

    private static byte[] Carried(string name)
    {
        using Stream stream = typeof(SheetFonts).Assembly.GetManifestResourceStream("fonts/" + name)
            ?? throw new InvalidOperationException($"the program lacks its font {name}");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
