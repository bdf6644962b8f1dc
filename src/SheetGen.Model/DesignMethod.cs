namespace SheetGen.Model;

/// <summary>How the engineer compares resistance and load.</summary>
public enum DesignMethod
{
    /// <summary>Not given: nominal resistance over load, without factors.</summary>
    Nominal,

    /// <summary>Load and resistance factor design: resistance factor times resistance over load factor times load.</summary>
    Lrfd,

    /// <summary>Allowable stress design: resistance over safety factor times load.</summary>
    Asd,
}
