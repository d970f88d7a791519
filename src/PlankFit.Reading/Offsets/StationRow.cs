using System.Collections.Immutable;
using PlankFit.Planking.Findings;

namespace PlankFit.Reading.Offsets;

/// <summary>The row position without a line: where each station stands along the hull.</summary>
internal static class StationRow
{
    /// <summary>Positions as the table gives them, left to right, strictly growing or (table growing forward) strictly falling; null where any is wrong.</summary>
    public static ImmutableArray<double>? Read(
        OffsetCells? row,
        OffsetHead head,
        bool forward,
        string file,
        List<Finding> findings
    )
    {
        if (row is null)
        {
            findings.Add(
                new(
                    Severity.Error,
                    file,
                    "the table has no positions of its stations: give a row that begins with an empty cell and then \"position\""
                )
            );
            return null;
        }

        bool whole = true;
        for (int i = 0; i < row.Mm.Length; i++)
        {
            whole &= row.Mm[i] is not null;
            if (!row.Written[i])
            {
                findings.Add(
                    new(
                        Severity.Error,
                        OffsetRows.Cell(file, row.FileLine, i, head.Columns[i]),
                        "the station has no position"
                    )
                );
            }
        }

        return whole && InOrder(row, head, forward, file, findings)
            ? [.. row.Mm.Select(mm => mm!.Value)]
            : null;
    }

    private static bool InOrder(
        OffsetCells row,
        OffsetHead head,
        bool forward,
        string file,
        List<Finding> findings
    )
    {
        int falls = 0;
        for (int i = 1; i < row.Mm.Length; i++)
        {
            falls += row.Mm[i] < row.Mm[i - 1] ? 1 : 0;
        }

        bool allFall = row.Mm.Length > 1 && falls == row.Mm.Length - 1;
        if (forward && allFall)
        {
            return true;
        }

        bool fine = true;
        for (int i = 1; i < row.Mm.Length; i++)
        {
            if (row.Mm[i] > row.Mm[i - 1])
            {
                continue;
            }

            fine = false;
            string fault =
                row.Mm[i] == row.Mm[i - 1]
                    ? $"stands at the same position as station {head.Columns[i - 1]}: each station is given once"
                    : $"is out of order: its position is less than that of station {head.Columns[i - 1]}";
            if (allFall)
            {
                fault +=
                    "; if the positions are measured from aft, say positions = \"forward\" under [hull]";
            }

            findings.Add(
                new(
                    Severity.Error,
                    OffsetRows.Cell(file, row.FileLine, i, head.Columns[i]),
                    $"station {head.Columns[i]} {fault}"
                )
            );
            if (allFall)
            {
                break;
            }
        }

        return fine;
    }
}
