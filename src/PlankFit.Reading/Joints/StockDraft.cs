using System.Collections.Immutable;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Joints;

/// <summary>How butts are sawn and what backs them, as far as a table says.</summary>
internal sealed record ButtDraft(
    ButtCut? Cut,
    ImmutableArray<string>? On,
    double? BlockMm,
    double? BearingMm
);

/// <summary>The stock and the kind of joint as far as a table says: [joints] may leave to each [[joints.layer]] what it does not say itself.</summary>
internal sealed record StockDraft(
    double? LongestMm,
    double? ShortestMm,
    JointKind? Kind,
    double? Ratio,
    ButtDraft Butt,
    double? GridMm,
    ImmutableArray<double> StockLengthsMm
)
{
    public static readonly StockDraft Nothing = new(
        null,
        null,
        null,
        null,
        new(null, null, null, null),
        null,
        []
    );

    /// <summary>What the table says, and where it says nothing what holds for all layers.</summary>
    public static StockDraft Read(TableReader table, LengthUnit units, StockDraft usual)
    {
        ImmutableArray<double> lengths = LengthList.Of(table, JointKeys.StockLengths, units);
        double? longest =
            table.Length(JointKeys.Longest, units) ?? (lengths.IsEmpty ? null : lengths[^1]);
        return new(
            longest ?? usual.LongestMm,
            table.Length(JointKeys.Shortest, units) ?? usual.ShortestMm,
            table.Choice(JointKeys.Kind) ?? usual.Kind,
            table.Number(JointKeys.Ratio) ?? usual.Ratio,
            new(
                table.Choice(JointKeys.Cut) ?? usual.Butt.Cut,
                table.Has(JointKeys.On)
                    ? [.. table.Texts(JointKeys.On).Select(t => t.Text)]
                    : usual.Butt.On,
                table.Length(JointKeys.Block, units) ?? usual.Butt.BlockMm,
                table.Length(JointKeys.Bearing, units) ?? usual.Butt.BearingMm
            ),
            table.Length(JointKeys.Grid, units) ?? usual.GridMm,
            // A layer's own longest piece is of stock of its own.
            lengths.IsEmpty && longest is null
                ? usual.StockLengthsMm
                : lengths
        );
    }
}
