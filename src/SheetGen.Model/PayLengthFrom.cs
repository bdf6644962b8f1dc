namespace SheetGen.Model;

/// <summary>From where the paid length of a nail is measured.</summary>
public enum PayLengthFrom
{
    /// <summary>Front of the temporary shotcrete (the face).</summary>
    Face,

    /// <summary>Back of the temporary shotcrete.</summary>
    BackOfShotcrete,
}

/// <summary>The words for it.</summary>
public static class PayLengthFromWords
{
    /// <summary>What stands for the words in a pay item's "measured".</summary>
    public const string Field = "{pay_length_from}";

    public static string Words(this PayLengthFrom from) => from == PayLengthFrom.BackOfShotcrete ? "the back of the shotcrete" : "the face of the shotcrete";
}
