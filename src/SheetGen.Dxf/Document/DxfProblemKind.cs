namespace SheetGen.Dxf;

/// <summary>What a <see cref="DxfProblem"/> is about, so that a caller leaves out what does not concern it.</summary>
public enum DxfProblemKind
{
    /// <summary>Something that is drawn, or the file itself.</summary>
    Content,

    /// <summary>A layer, text style or application that is used but not defined: the reader adds it, and nothing is lost.</summary>
    Definition,

    /// <summary>A dimension style that is used but not defined: the reader adds it.</summary>
    DimensionStyle,

    /// <summary>The block with the picture of a dimension.</summary>
    DimensionPicture,

    /// <summary>A sheet of paper or a viewport.</summary>
    Paper,
}
