using PdfSharp.Fonts;
using SheetGen.Drawing.Labels;

namespace SheetGen.Writers.Pdf;

/// <summary>Gives the PDF package the sheet font, and no other.</summary>
public sealed class SheetFonts : IFontResolver
{
    public const string Family = "Sheet Sans";

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? "bold" : "regular");

    public byte[]? GetFont(string faceName) => SheetFont.Face(faceName == "bold").Bytes.ToArray();
}
