using SheetGen.Drawing.Sheets;
using SheetGen.Writers.Picture;

namespace SheetGen.Cli;

/// <summary>The picture that a run writes on demand, beside the set of results.</summary>
public static class PictureFile
{
    /// <summary>What is wrong with the name; null for a picture that can be made.</summary>
    public static string? Fault(string path) => Path.GetExtension(path).ToLowerInvariant() is ".svg" or ".png"
        ? Directory.Exists(path) ? $"{path} is a folder" : null
        : $"--picture takes a file that ends in .svg or .png, not {path}";

    /// <summary>Writes the picture; an older one is replaced when the new one is whole.</summary>
    /// <exception cref="OutputException">The file cannot be written.</exception>
    public static void Write(string path, SheetSet sheets)
    {
        using var stream = new MemoryStream();
        if (Path.GetExtension(path).Equals(".svg", StringComparison.OrdinalIgnoreCase))
            SvgPicture.Write(sheets, stream);
        else
            PngPicture.Write(sheets, stream);
        WholeFile.Replace(path, stream.ToArray());
    }
}
