using System.Collections.Immutable;
using PlankFit.Export;
using PlankFit.Export.Dxf;
using PlankFit.Export.Files;
using PlankFit.Export.Sheets;
using PlankFit.Planking;

namespace PlankFit.App;

/// <summary>Tables and full-size sections for setting up, and the corner at the chine.</summary>
internal static class SettingUpFiles
{
    public static ImmutableArray<FileWork> Of(BottomPlan plan)
    {
        if (plan.SettingUp is not { } setting)
        {
            return [];
        }

        var work = ImmutableArray.CreateBuilder<FileWork>();
        work.Add(
            LayFiles.Pdf(
                "setting-up.pdf",
                plan,
                "setting up",
                () => SettingUpPages.Of(plan, setting)
            )
        );
        work.Add(
            LayFiles.File(
                "frames.csv",
                s => Csv.Write(SettingUpTables.Frames(plan.Job, setting), s)
            )
        );
        if (!setting.Corners.IsEmpty)
        {
            work.Add(
                LayFiles.File(
                    "chine.csv",
                    s => Csv.Write(SettingUpTables.Corners(plan.Job, setting), s)
                )
            );
        }

        work.Add(
            LayFiles.Pdf(
                "patterns/sections.pdf",
                plan,
                "full-size sections",
                () =>
                    [
                        .. setting.Frames.SelectMany(f =>
                            LongPages.Of(plan.Job, SectionPattern.Of(plan, f))
                        ),
                    ]
            )
        );
        work.Add(new("sections, DXF", output => Sections(output, plan, setting)));
        return work.ToImmutable();
    }

    private static void Sections(OutputFolder output, BottomPlan plan, SettingUpPlan setting)
    {
        foreach (FrameSection frame in setting.Frames)
        {
            Drawing section = SectionPattern.Of(plan, frame);
            foreach (
                (string folder, DxfVersion version) in new[]
                {
                    ("r2000", DxfVersion.R2000),
                    ("r12", DxfVersion.R12),
                }
            )
            {
                output.Write(
                    $"dxf/{folder}/{SectionPattern.FileName(frame)}.dxf",
                    s => DxfWriter.Write(s, section, new(version, plan.Job.Output.DxfUnits))
                );
            }
        }
    }
}
