namespace SheetGen.Drawing.Templating;

/// <summary>The sheet sizes and scales as their file has them.</summary>
internal sealed record SizeList(List<SheetSize> Sizes, List<double> FootScales, List<double> MetreScales, List<double> SectionFootScales, List<double> SectionMetreScales,
    List<double> DetailFootScales, List<double> DetailMetreScales);
