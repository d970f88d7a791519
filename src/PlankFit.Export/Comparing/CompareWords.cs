using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Comparing;

/// <summary>What lists, sheets and the terminal say of lay-outs side by side.</summary>
public static class CompareWords
{
    /// <summary>Rows of the terminal's table beyond those that nothing beats are in the list.</summary>
    private const int MostRows = 40;
    private const int MostNotLaid = 8;

    /// <summary>Of fewer all can be looked at, and no advice is wanted.</summary>
    private const int FewLayouts = 8;
    private const int MostAdvice = 3;

    /// <summary>What is shown of each: what they are held by, and the rest where it has figures.</summary>
    public static ImmutableArray<Measure> Columns(Comparison c) =>
        [
            .. Measure.All.Where(m => c.Laid.Any(l => m.Of(l.Figures!) is not null)),
            .. new[] { Measure.Refused, Measure.DoNotSaw }.Where(m =>
                c.Laid.Any(l => m.Of(l.Figures!) > 0)
            ),
        ];

    /// <summary>45 lay-outs; or 44 of 45 lay-outs can be laid. Nothing beats 7 of them in planks to saw and waste taken together.</summary>
    public static string Head(Comparison c)
    {
        int laid = c.Laid.Count();
        string stopped = c.IsStopped
            ? $"Stopped after {c.Layouts.Length} of {c.Asked}: these are kept. "
            : "";
        string all =
            !c.NotLaid.Any() ? PlanWords.Count(laid, "lay-out")
            : laid == 0 ? $"None of {PlanWords.Count(c.NotLaid.Count(), "lay-out")} can be laid"
            : $"{laid} of {PlanWords.Count(laid + c.NotLaid.Count(), "lay-out")} can be laid";
        return laid < 2
            ? $"{stopped}{all}{(laid == 0 ? "" : ": there is nothing to hold it against")}."
            : $"{stopped}{all}. Nothing beats {c.Unbeaten.Count} of them in {By(c)}{(c.By.Length > 1 ? " taken together" : "")}.";
    }

    public static string By(Comparison c) =>
        c.By.Length == 1
            ? c.By[0].Head
            : string.Join(", ", c.By.SkipLast(1).Select(m => m.Head)) + " and " + c.By[^1].Head;

    /// <summary>The first reason of each, a line each; all reasons are in the list's own file.</summary>
    public static IEnumerable<string> NotLaid(Comparison c)
    {
        foreach (Layout l in c.NotLaid.Take(MostNotLaid))
        {
            string more = l.Why.Length > 1 ? $" ({l.Why.Length - 1} more of it in the list)" : "";
            yield return $"{l.Name} cannot be laid: {l.Why[0]}{more}.";
        }

        int rest = c.NotLaid.Count() - MostNotLaid;
        if (rest > 0)
        {
            yield return $"and {rest} more that cannot be laid: see the list.";
        }
    }

    /// <summary>What nothing beats and the job as it stands as a table for the terminal; all is in the list.</summary>
    public static IEnumerable<string> Table(Comparison c)
    {
        ImmutableArray<Measure> columns = Columns(c);
        Layout[] rows =
        [
            .. c.Laid.Where(l => c.Unbeaten.Contains(l.Number) || l.Number == 0).Take(MostRows),
        ];
        ImmutableArray<string>[] cells =
        [
            ["", "lay-out", .. columns.Select(m => m.Head)],
            .. rows.Select(l => Row(c, l, columns)),
        ];
        int[] widths = [.. cells[0].Select((_, i) => cells.Max(r => r[i].Length))];
        foreach (ImmutableArray<string> row in cells)
        {
            yield return string.Join("  ", row.Select((cell, i) => cell.PadRight(widths[i])))
                .TrimEnd();
        }

        int more = c.Unbeaten.Count - rows.Count(l => c.Unbeaten.Contains(l.Number));
        if (more > 0)
        {
            yield return $"and {more} more that nothing beats: see the list.";
        }
    }

    /// <summary>Where nearly all are left, since each is best in something: by which few figures fewer would be; null where enough fall out.</summary>
    /// <param name="option">How figures are asked for: --by.</param>
    public static string? Fewer(Comparison c, string option)
    {
        int laid = c.Laid.Count();
        if (laid < FewLayouts || c.By.Length < 2 || 2 * c.Unbeaten.Count <= laid)
        {
            return null;
        }

        Measure[] told =
        [
            .. c.By.Where(m => c.Laid.Select(l => m.InSteps(l.Figures!)).Distinct().Count() > 1),
        ];
        (string By, int Left)[] fewer =
        [
            .. told.SelectMany((one, i) => told.Skip(i + 1).Select(other => (one, other)))
                .Select(p =>
                    ($"{p.one.Name},{p.other.Name}", c.Seen([p.one, p.other], null).Unbeaten.Count)
                )
                .Where(p => 2 * p.Count <= c.Unbeaten.Count)
                // Where one is left nothing is left to choose.
                .OrderBy(p => p.Count < 2)
                .ThenBy(p => p.Count)
                .Take(MostAdvice),
        ];
        return fewer.Length == 0
            ? null
            : $"More than half are left, since each is best in something: hold them by fewer figures, those that matter to you. {string.Join("; ", fewer.Select(f => $"{option} {f.By} leaves {f.Left}"))}.";
    }

    /// <summary>The number, with a star where nothing beats it; the name; the figures.</summary>
    public static ImmutableArray<string> Row(
        Comparison c,
        Layout l,
        ImmutableArray<Measure> columns
    ) =>
        [
            (c.Unbeaten.Contains(l.Number) ? "*" : "") + (l.Number == 0 ? "" : $"{l.Number}"),
            l.Name,
            .. columns.Select(m => m.Words(l.Figures!, c.Job.Units)),
        ];

    /// <summary>In a few words below its picture.</summary>
    public static ImmutableArray<string> Brief(Layout l, LengthUnit unit)
    {
        LaidFigures f = l.Figures!;
        return
        [
            $"{PlanWords.Count(f.Planks, "plank")}, {PlanWords.Stock(f.StockMm, unit)} of stock, waste {Measure.Waste.Words(f, unit)}"
                + (f.Boards is null ? "" : $"; boards: {Measure.Boards.Words(f, unit)}"),
            $"{f.Tapered} tapered; bend {Measure.Bend.Words(f, unit)}",
            $"gap {Measure.Gap.Words(f, unit)}; drift {Measure.Drift.Words(f, unit)}"
                + (f.Refused > 0 ? $"; {PlanWords.Count(f.Refused, "plank")} REFUSED" : "")
                + (f.DoNotSaw > 0 ? $"; {PlanWords.Count(f.DoNotSaw, "finding")} DO NOT SAW" : ""),
        ];
    }
}
