namespace SheetGen.Model.Revisions;

/// <summary>The answer to a question of the plan review.</summary>
public enum ReviewAnswer
{
    Yes,
    No,

    /// <summary>Nothing that the project holds answers it.</summary>
    NeedsPerson,
}

/// <summary>A question of the plan review with the answer that the project gives.</summary>
/// <param name="Group">Heading that it stands under.</param>
/// <param name="Where">Where it stands on the sheets, or by which key the project would answer it.</param>
/// <param name="Note">What the answer rests on.</param>
public sealed record ReviewItem(string Group, string Question, ReviewAnswer Answer, string Where, string Note)
{
    /// <summary>The answer as printed.</summary>
    public string AnswerText => Answer switch { ReviewAnswer.Yes => "yes", ReviewAnswer.No => "NO", _ => "needs a person" };
}
