namespace SheetGen.Model;

/// <summary>What happens to the rows at an outside corner.</summary>
public enum CornerRows
{
    /// <summary>The same elevations on both legs.</summary>
    Continuous,

    /// <summary>The rows of the up-station leg moved by half the vertical spacing, so that holes pass each other.</summary>
    Shifted,
}
