using System.Collections.Immutable;

namespace PlankFit.Planking.Fairness;

/// <summary>A cell that a slip touched.</summary>
/// <param name="Row">Which of the rows looked at.</param>
/// <param name="Point">Which of the row's points.</param>
/// <param name="Residual">How far the value stands beyond what the rest foretell.</param>
/// <param name="MeantMm">What was meant; null where only the other cells tell.</param>
internal readonly record struct WrongCell(int Row, int Point, double Residual, double? MeantMm);

/// <summary>An explanation of what is unfair in a table.</summary>
/// <param name="LogOdds">ln of how much likelier the table is with it than without.</param>
/// <param name="Cells">All that it makes wrong.</param>
/// <param name="How">What happened, where it is known: "feet and inches exchanged".</param>
/// <param name="Sure">The part of the evidence that falls to just this explanation, 0 to 1.</param>
/// <param name="OrEnd">The point at the end of the row that explains it all but as well.</param>
/// <param name="Station">Where a station does not stand as written: its place in the table.</param>
/// <param name="PositionMm">Where it probably stands.</param>
internal sealed record Slip(
    double LogOdds,
    ImmutableArray<WrongCell> Cells,
    string? How,
    double Sure,
    int? OrEnd = null,
    int? Station = null,
    double PositionMm = 0
);

/// <summary>A row as the search goes on: cells found wrong are left out or hold what was meant.</summary>
/// <param name="Left">Which of the row's points are still looked at.</param>
internal sealed record RowAtWork(
    OffsetRow Row,
    ImmutableArray<int> Left,
    ImmutableArray<double> XMm,
    ImmutableArray<double> ValuesMm,
    RowEvidence Evidence
)
{
    /// <summary>Where a station stands among the points still looked at; -1 for none.</summary>
    public int At(int station)
    {
        for (int i = 0; i < Left.Length; i++)
        {
            if (Row.Stations[Left[i]] == station)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>The row without one of the points still looked at; its evidence is still that with it.</summary>
    public RowAtWork Without(int point) =>
        this with
        {
            Left = Left.RemoveAt(point),
            XMm = XMm.RemoveAt(point),
            ValuesMm = ValuesMm.RemoveAt(point),
        };

    /// <summary>The row with another value at a point; its evidence is still that of the old one.</summary>
    public RowAtWork Holding(int point, double mm) =>
        this with
        {
            ValuesMm = ValuesMm.SetItem(point, mm),
        };
}
