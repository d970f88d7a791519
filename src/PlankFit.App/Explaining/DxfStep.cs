using System.Collections.Immutable;
using PlankFit.App.Laying;
using PlankFit.Draughting.Dxf;
using PlankFit.Export;
using PlankFit.Export.Story;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.App.Explaining;

/// <summary>The last step of a plank's story: the line of the file that the saw is given.</summary>
internal static class DxfStep
{
    public static StoryStep Of(BottomPlan plan, Plank plank)
    {
        using var stream = new MemoryStream();
        DxfVersion version = OutputAsked.Versions(plan.Job.Output)[0];
        PlankFiles.WritePlankDxf(plan, plank, version, stream);
        string[] lines = System
            .Text.Encoding.ASCII.GetString(stream.GetBuffer(), 0, (int)stream.Length)
            .Split('\n', StringSplitOptions.TrimEntries);
        int at = FirstVertexOfCut(lines);
        ImmutableArray<string>.Builder told = ImmutableArray.CreateBuilder<string>();
        told.Add(
            $"{PlankFiles.DxfName(plank, version, plan.Job.Output)}, in {(plan.Job.Output.DxfUnits == DxfUnits.Inches ? "inches" : "millimetres")}, layer CUT: a closed polyline, chords within {CutTolerance()} mm of the shape to saw."
        );
        if (at >= 0)
        {
            told.Add(
                $"Its first corner stands on lines {at + 1} to {at + 4}: x = {lines[at + 1]}, y = {lines[at + 3]}."
            );
        }

        return new("The line of the DXF file (Export/Dxf)", told.ToImmutable());
    }

    private static string CutTolerance() => NumberText.Trimmed(DxfChords.WithinMm, 4);

    /// <summary>The index of the group code 10 that begins the first vertex of the outline on layer CUT.</summary>
    private static int FirstVertexOfCut(string[] lines)
    {
        for (int i = 0; i + 1 < lines.Length; i += 2)
        {
            if (lines[i] == "0" && lines[i + 1] is ("LWPOLYLINE" or "VERTEX"))
            {
                bool cut = false;
                for (int k = i + 2; k + 1 < lines.Length && lines[k] != "0"; k += 2)
                {
                    cut |= lines[k] == "8" && lines[k + 1] == "CUT";
                    if (cut && lines[k] == "10")
                    {
                        return k;
                    }
                }
            }
        }

        return -1;
    }
}
