using System.Collections.Immutable;
using PlankFit.Export.Comparing;
using PlankFit.Export.Words;
using PlankFit.Pages.Sessions;

namespace PlankFit.Pages.Answers;

/// <summary>A lay-out in a row of the page's table.</summary>
/// <param name="Cells">Under the columns of the answer.</param>
/// <param name="Brief">In a few lines, below its picture.</param>
internal sealed record LayoutAnswer(
    int Search,
    int Number,
    string Name,
    bool IsUnbeaten,
    bool IsKept,
    bool CanBeTaken,
    ImmutableArray<string> Cells,
    ImmutableArray<string> Brief
);

/// <summary>What was tried of a job: those lay-outs that nothing beats, the job as it stands, and what is kept.</summary>
/// <param name="Turn">Of the text that was varied.</param>
internal sealed record OthersAnswer(int Search, int Turn, bool IsBusy, int Tried, int Asked)
{
    /// <summary>A page shows no more rows: what it would take to look at them is not looked at.</summary>
    private const int MostRows = 200;

    /// <summary>How many there are and how many nothing beats; empty before anything is laid.</summary>
    public required string Head { get; init; }

    public required ImmutableArray<string> Columns { get; init; }

    public required ImmutableArray<LayoutAnswer> Layouts { get; init; }

    public required ImmutableArray<LayoutAnswer> Kept { get; init; }

    /// <summary>Faults of what was asked, and lay-outs that cannot be laid with their reasons.</summary>
    public required ImmutableArray<string> Told { get; init; }

    /// <summary>What may be held against each other and what may stand along the chart: names, and how each is called.</summary>
    public required ImmutableArray<NamedAnswer> Measures { get; init; }

    /// <param name="found">What was found, seen as the page asks for.</param>
    public static OthersAnswer Of(TriedNow now, Comparison? found)
    {
        ImmutableArray<Measure> columns = [.. found is null ? [] : CompareWords.Columns(found)];
        // What is kept may have figures that the present search has not.
        columns =
        [
            .. columns,
            .. Measure.All.Where(m =>
                !columns.Contains(m) && now.Kept.Any(k => m.Of(k.Layout.Figures!) is not null)
            ),
        ];
        Planking.Units.LengthUnit unit = found?.Job.Units ?? Planking.Units.LengthUnit.Millimetre;
        LayoutAnswer Row(int search, Layout l) =>
            new(
                search,
                l.Number,
                l.Name,
                search == now.Search && found is not null && found.Unbeaten.Contains(l.Number),
                now.Kept.Any(k => k.Search == search && k.Layout.Number == l.Number),
                !l.Changed.IsEmpty,
                [.. columns.Select(m => m.Words(l.Figures!, unit))],
                CompareWords.Brief(l, unit)
            );
        return new(now.Search, now.Turn, now.IsBusy, found?.Layouts.Length ?? 0, found?.Asked ?? 0)
        {
            Head = found is null || now.IsBusy ? "" : CompareWords.Head(found),
            Columns = [.. columns.Select(m => m.Head)],
            Layouts =
            [
                .. found is null
                    ? []
                    : found
                        .Laid.Where(l => l.Number == 0 || found.Unbeaten.Contains(l.Number))
                        .Take(MostRows)
                        .Select(l => Row(now.Search, l)),
            ],
            Kept = [.. now.Kept.Select(k => Row(k.Search, k.Layout))],
            Told =
            [
                .. now.Told.Select(FindingsText.Words),
                .. found is null ? [] : CompareWords.NotLaid(found).Take(MostRows),
            ],
            Measures = [.. Measure.All.Select(m => new NamedAnswer(m.Name, m.Head))],
        };
    }
}

internal sealed record NamedAnswer(string Name, string Head);
