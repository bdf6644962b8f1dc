namespace SheetGen.Drawing.Labels;

/// <summary>What a line does to the labels near it.</summary>
public enum LineKind
{
    /// <summary>Texts and leaders may cross it, though texts had better not.</summary>
    Soft,
    /// <summary>No text may stand on it; leaders may cross it, though they had better not.</summary>
    NoText,
    /// <summary>A line of a dimension: the same, and no leader that can avoid it ends on it.</summary>
    Dimension,
    /// <summary>Neither texts nor leaders may cross it.</summary>
    Leader,
}
