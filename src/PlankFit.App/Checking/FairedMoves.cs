using System.Collections.Immutable;
using PlankFit.Export.Tables;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Units;

namespace PlankFit.App.Checking;

/// <summary>Every move of a faired table, one a row: what was written, what is written now, and by how many millimetres it moved.</summary>
internal static class FairedMoves
{
    public static Table Of(FairedTable faired, LengthUnit units) =>
        new(
            "moves",
            [
                new("line", 20),
                new("measure", 14),
                new("station", 10),
                new("old", 12),
                new("new", 12),
                new("moved mm", 10, 3),
            ],
            [
                .. faired.Moves.Select(m =>
                    (ImmutableArray<TableCell>)
                        [
                            m.Line,
                            OffsetRow.Word(m.Measure),
                            m.Station,
                            TableText.Of(m.OldMm, units),
                            TableText.Of(m.NewMm, units),
                            m.MoveMm,
                        ]
                ),
            ]
        );
}
