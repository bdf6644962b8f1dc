using SheetGen.Model.Revisions;

namespace SheetGen.Writers.Workbook;

/// <summary>The plan review, a row a question, with cells for initials and date.</summary>
internal sealed class ReviewSheet
{
    public ReviewSheet(WorkbookInput input)
    {
        Sheet = SheetHead.Make(input, "Plan review", "Plan review", "Answers come from the project file and the layout; yellow cells are filled in by who reviews. Lines that do not apply are initialled too.");
        var t = new TableBlock<ReviewItem>(Sheet, "PlanReview", 5, input.Review, true);
        t.Text("group", "Part", 22, i => i.Group).Wrapped("question", "Question", 60, i => i.Question).Text("answer", "Answer", 15, i => i.AnswerText)
            .Wrapped("where", "Where", 32, i => i.Where).Wrapped("note", "What it rests on", 60, i => i.Note)
            .Input("initials", "Initials", 10, CellFormat.Text).Input("date", "Date", 12, CellFormat.Date);
        t.Fill("plan-review");
    }

    public SheetContent Sheet { get; }
}
