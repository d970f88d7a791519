using PlankFit.Export.Sheets;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Views;

/// <summary>A drawing that is a sheet of its own for the wall: forward to the left, its scale in the title block.</summary>
internal static class OverviewSheet
{
    public static Drawing Of(
        Job job,
        (string Title, string Of) head,
        Ratio ratio,
        string caution,
        Action<SheetCanvas> draw
    ) => SheetPage.Numbered(job, [Page(job, head, ratio, caution, draw)])[0];

    public static SheetPage Page(
        Job job,
        (string Title, string Of) head,
        Ratio ratio,
        string caution,
        Action<SheetCanvas> draw
    ) =>
        new(
            SheetFormat.Wall(job),
            new TitleBlock(head.Title, head.Of, "scale " + ratio, new Vec2(-1, 0), caution),
            (pad, _) => draw(pad)
        )
        {
            FoundBy = [$"{head.Title}, {SheetWords.Brief(head.Of)}"],
        };
}
