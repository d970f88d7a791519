using System.Text;
using PlankFit.Draughting.Files;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Fairness;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Text;

namespace PlankFit.App.Checking;

/// <summary>Writes the faired copy of the table beside the old one, and the list of every move. The job goes on reading the old table until a person changes it.</summary>
internal static class FairedFiles
{
    public static IEnumerable<string> Write(
        string table,
        Job job,
        double toleranceMm,
        CancellationToken stop
    )
    {
        FairedTable faired = Fairing.Fair(job.Offsets, toleranceMm, job.WrittenIn);
        foreach (Finding left in faired.Findings)
        {
            yield return FindingsText.Line(left);
        }

        if (faired.Moves.IsEmpty)
        {
            yield return "Nothing to fair: no value gains from moving.";
            yield break;
        }

        string copy = Path.ChangeExtension(table, ".faired.csv"),
            moves = Path.ChangeExtension(table, ".moves.csv"),
            beside = Path.GetDirectoryName(Path.GetFullPath(table))!,
            folder =
                Directory.ResolveLinkTarget(beside, returnFinalTarget: true)?.FullName ?? beside;
        if (TextFile.Read(table, table) is not { Text: { } text })
        {
            throw new OutputException($"Cannot write {copy}: {table} is gone.", copy);
        }

        // A run of its own, so that a copy that somebody has worked on, or a file of the user's with its name, is not written over.
        using (
            var output = OutputFolder.Begin(folder, "check --fair " + Path.GetFileName(table), stop)
        )
        {
            output.Write(
                Path.GetFileName(copy),
                Encoding.UTF8.GetBytes(OffsetTableWriter.Faired(text, faired.Moves, job.WrittenIn))
            );
            output.Write(
                Path.GetFileName(moves),
                s => Csv.Write(FairedMoves.Of(faired, job.WrittenIn), s)
            );
            output.Commit();
        }

        double most = faired.Moves.Max(m => Math.Abs(m.MoveMm));
        yield return $"{PlanWords.Count(faired.Moves.Length, "value")} moved, the most by {LengthText.Fine(most, job.Units)}: the faired table is {copy}, every move is in {moves}. The job still reads the old table.";
    }
}
