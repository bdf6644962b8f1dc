namespace SheetGen.Model;

/// <summary>How the columns of neighbouring rows stand to each other.</summary>
public enum Pattern
{
    /// <summary>One above the other.</summary>
    Square,

    /// <summary>Every second row moved by half the spacing.</summary>
    Staggered,
}
