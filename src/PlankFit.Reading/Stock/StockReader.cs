using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Stock;

/// <summary>The stock that [nest] names, from the texts of its files.</summary>
internal static class StockReader
{
    /// <param name="texts">Of the files of <paramref name="draft"/>, in their order; null where one could not be read, which is said already.</param>
    public static (NestSpec? Spec, ImmutableArray<Finding> Findings) Read(
        NestDraft? draft,
        (LengthUnit Written, LengthUnit Shown) units,
        ImmutableArray<LayerSpec> layers,
        ImmutableArray<string?> texts
    )
    {
        if (draft is null)
        {
            return (null, []);
        }

        ImmutableArray<StockBoard>.Builder boards = ImmutableArray.CreateBuilder<StockBoard>();
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        var seen = new Dictionary<string, string>();
        int at = 0;
        foreach ((string file, _) in draft.Files)
        {
            bool onHand = at < draft.Stock.Length;
            if (at < texts.Length && texts[at] is { } text)
            {
                (ImmutableArray<StockBoard> read, ImmutableArray<Finding> ofFile) = StockText.Read(
                    text,
                    file,
                    units.Written,
                    draft.Spec,
                    onHand,
                    seen
                );
                boards.AddRange(read);
                findings.AddRange(ofFile);
            }

            at++;
        }

        NestSpec spec = draft.Spec with { Boards = boards.ToImmutable() };
        findings.AddRange(TooMany(spec));
        findings.AddRange(OfNoUse(spec, layers, units.Shown));
        return (spec, findings.ToImmutable());
    }

    /// <summary>More boards on hand than a rack holds, told at the row that is too much.</summary>
    private static IEnumerable<Finding> TooMany(NestSpec spec)
    {
        int sum = spec.Boards.Where(b => b.OnHand).Sum(b => b.Count ?? 1),
            so = 0;
        if (sum <= Bounds.Boards)
        {
            return [];
        }

        StockBoard at = spec
            .Boards.Where(b => b.OnHand)
            .First(b => (so += b.Count ?? 1) > Bounds.Boards);
        return
        [
            new(
                Severity.Error,
                FormattableString.Invariant($"{at.File}, line {at.Line}"),
                Bounds.Beyond(sum, Bounds.Boards, "boards on hand, with their counts")
            ),
        ];
    }

    /// <summary>Boards whose thickness no layer has any use for.</summary>
    private static IEnumerable<Finding> OfNoUse(
        NestSpec spec,
        ImmutableArray<LayerSpec> layers,
        LengthUnit units
    ) =>
        from board in spec.Boards
        where
            layers
                .OfType<PlankLayerSpec>()
                .All(l => !StockMatch.Thickness(spec, board, l.ThicknessMm))
        group board by (board.File, board.ThicknessMm) into alike
        select new Finding(
            Severity.Note,
            FormattableString.Invariant($"{alike.Key.File}, line {alike.First().Line}"),
            $"{string.Join(", ", alike.Select(b => b.Id))}: {LengthText.ForPaper(alike.Key.ThicknessMm, units)} thick serves no layer; a layer's own thickness, the planing allowance and up to {LengthText.ForPaper(spec.ThickerMm, units)} more (thicker in [nest]) would"
        );
}
