using System.Collections.Immutable;
using PlankFit.Draughting.Skia;
using PlankFit.Draughting.Tiling;
using PlankFit.Export.Cards;
using PlankFit.Export.Views;
using PlankFit.Export.Whole;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Whole;
using PlankFit.Reading.Jobs;
using PlankFit.Tests.Support;
using SkiaSharp;

namespace PlankFit.Tests.Architecture;

/// <summary>README's picture is what the program draws today. PLANKFIT_PICTURE=1 writes it anew: look at it then.</summary>
public sealed class ReadmePictureTests
{
    private const double Dpi = 66;
    private const double WidthMm = 420;

    [Fact]
    public void ItIsWhatTheProgramDraws()
    {
        string folder = DemoTables.Demo("survey-launch"),
            file = Path.Combine(folder, "what-comes-out.png");
        BottomPlan plan = BottomPlanner
            .Plan(
                JobReader.Read(Path.Combine(folder, "job.toml")).Job!,
                null,
                TestContext.Current.CancellationToken
            )
            .Plan!;
        using var drawn = new MemoryStream();
        PngWriter.Write(
            drawn,
            OneAboveTheOther(
                BottomPlanView.Of(plan, plan.PlankLayers.First()),
                PlankCardPages.Of(OnPlanks.Of(plan))[5]
            ),
            Dpi
        );
        if (Environment.GetEnvironmentVariable("PLANKFIT_PICTURE") is not null)
        {
            File.WriteAllBytes(file, drawn.ToArray());
        }

        using var now = SKBitmap.Decode(drawn.ToArray());
        using var then = SKBitmap.Decode(file);
        Assert.Equal((then.Width, then.Height), (now.Width, now.Height));
        int other = Enumerable
            .Range(0, now.Height)
            .Sum(y =>
                Enumerable
                    .Range(0, now.Width)
                    .Count(x => Math.Abs(now.GetPixel(x, y).Red - then.GetPixel(x, y).Red) > 64)
            );
        Assert.True(other == 0, $"{other} points are other: PLANKFIT_PICTURE=1 draws it anew");
    }

    private static Drawing OneAboveTheOther(params Drawing[] drawings)
    {
        Drawing[] alike = [.. drawings.Select(d => Scaled(d, WidthMm / d.WidthMm))];
        double top = alike.Sum(d => d.HeightMm),
            high = top;
        ImmutableArray<Shape>.Builder shapes = ImmutableArray.CreateBuilder<Shape>();
        foreach (Drawing d in alike)
        {
            top -= d.HeightMm;
            shapes.AddRange(d.Shapes.Select(s => Placed.By(s, new Vec2(0, top))));
        }

        return new("PlankFit", WidthMm, high, shapes.ToImmutable());
    }

    private static Drawing Scaled(Drawing drawing, double by) =>
        new(
            drawing.Title,
            by * drawing.WidthMm,
            by * drawing.HeightMm,
            [.. drawing.Shapes.Select(s => Scaled(s, by))]
        );

    private static Shape Scaled(Shape shape, double by) =>
        shape switch
        {
            Polyline line => line with { Points = [.. line.Points.Select(p => by * p)] },
            CircleShape circle => circle with
            {
                Centre = by * circle.Centre,
                RadiusMm = by * circle.RadiusMm,
            },
            Lettering text => text with { At = by * text.At, HeightMm = by * text.HeightMm },
            _ => throw new NotSupportedException($"No way to scale a {shape.GetType().Name}."),
        };
}
