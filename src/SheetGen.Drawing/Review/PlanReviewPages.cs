using SheetGen.Drawing.Sheets;
using SheetGen.Model.Revisions;

namespace SheetGen.Drawing.Review;

/// <summary>The plan review as pages with cells for initials and date.</summary>
public static class PlanReviewPages
{
    public static SheetSet Compose(IReadOnlyList<ReviewItem> items, ReviewInfo info)
    {
        var book = new ReviewBook(info, ReviewPaper.Upright(info.Unit), "Plan review");
        book.Page("Plan review");
        int Count(ReviewAnswer answer) => items.Count(i => i.Answer == answer);
        book.Paragraph($"{Count(ReviewAnswer.Yes)} yes, {Count(ReviewAnswer.No)} no, {Count(ReviewAnswer.NeedsPerson)} need a person. Answers come from the project file and the layout; every line is to be initialled, those that do not apply too.");
        foreach (IGrouping<string, ReviewItem> group in items.GroupBy(i => i.Group))
        {
            book.Heading(group.Key);
            book.Table([("Question", 5.4), ("Answer", 1.6), ("Where", 3.4), ("What it rests on", 4), ("Initials", 1.3), ("Date", 1.3)],
                group.Select(i => (IReadOnlyList<string>)[i.Question, i.AnswerText, i.Where, i.Note, "", ""]));
        }
        return book.Set();
    }
}
