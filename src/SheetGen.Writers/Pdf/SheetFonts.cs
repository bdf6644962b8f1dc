using PdfSharp.Fonts;

namespace SheetGen.Writers.Pdf;

/// <summary>
/// Finds one sans-serif face with the widths that the sheets are laid out by: Liberation Sans, Arimo or Arial from the system's font
/// folders; where there is none, the face that comes with the PDF package.
/// </summary>
public sealed class SheetFonts : IFontResolver
{
    public const string Family = "Sheet Sans";

    private static readonly (string Regular, string Bold)[] Wanted =
    [
        ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
        ("Arimo-Regular.ttf", "Arimo-Bold.ttf"),
        ("arial.ttf", "arialbd.ttf"),
        ("Arial.ttf", "Arial Bold.ttf"),
    ];

    private readonly byte[] _regular;
    private readonly byte[] _bold;

    private SheetFonts(string name, byte[] regular, byte[] bold)
    {
        Name = name;
        _regular = regular;
        _bold = bold;
    }

    /// <summary>What face is used, for the file's metadata.</summary>
    public string Name { get; }

    /// <summary>Looks through the usual folders of the system.</summary>
    public static SheetFonts Find()
    {
        foreach ((string regular, string bold) in Wanted)
        {
            foreach (string folder in Folders().Where(Directory.Exists))
            {
                var options = new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, MatchCasing = MatchCasing.CaseSensitive };
                string? first = Directory.EnumerateFiles(folder, regular, options).Order(StringComparer.Ordinal).FirstOrDefault();
                string? second = Directory.EnumerateFiles(folder, bold, options).Order(StringComparer.Ordinal).FirstOrDefault();
                if (first is not null && second is not null)
                    return new(Path.GetFileNameWithoutExtension(regular), File.ReadAllBytes(first), File.ReadAllBytes(second));
            }
        }
        return new("package face", PdfSharp.WPFonts.FontDataHelper.SegoeWP, PdfSharp.WPFonts.FontDataHelper.SegoeWPBold);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) => new(isBold ? "bold" : "regular");

    public byte[]? GetFont(string faceName) => faceName == "bold" ? _bold : _regular;

    private static IEnumerable<string> Folders()
    {
        yield return "/usr/share/fonts";
        yield return "/usr/local/share/fonts";
        yield return Environment.GetFolderPath(Environment.SpecialFolder.Fonts);
        yield return "/Library/Fonts";
        yield return "/System/Library/Fonts/Supplemental";
    }
}
