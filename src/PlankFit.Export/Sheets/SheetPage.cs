using System.Collections.Immutable;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Sheets;

/// <summary>A page before it is numbered: its paper, its title block and what is drawn inside.</summary>
internal sealed record SheetPage(
    SheetFormat Format,
    TitleBlock Block,
    Action<SheetCanvas, Box> Matter
)
{
    /// <summary>As <see cref="Drawing.FoundBy"/>.</summary>
    public ImmutableArray<string> FoundBy { get; init; } = [];

    /// <summary>Pages numbered through, each with its frame.</summary>
    public static ImmutableArray<Drawing> Numbered(Job job, IReadOnlyList<SheetPage> pages) =>
        [.. pages.Select((page, i) => page.Drawn(job, i + 1, pages.Count))];

    private Drawing Drawn(Job job, int number, int of)
    {
        SheetCanvas pad = new();
        Frame.Draw(pad, Format, job, Block, number, of);
        Matter(pad, Frame.Inside(Format));
        return pad.Done(
            $"{job.Name}: {Block.Sheet}, {Block.Of}" + (of > 1 ? $", page {number} of {of}" : ""),
            Format.WidthMm,
            Format.HeightMm
        ) with
        {
            FoundBy = FoundBy,
        };
    }
}
