using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Reading.AsBuilt;
using PlankFit.Reading.Text;
using PlankFit.Tests.Support;

namespace PlankFit.Tests.Reading;

/// <summary>
/// A record of sawn planks that was damaged is refused, or it gives exactly the planks that were sawn: never others in silence, never an exception.
/// </summary>
public sealed partial class SpoiledRecordTests
{
    private static readonly bool Long = Environment.GetEnvironmentVariable("PLANKFIT_LONG") is "1";

    private static readonly Lazy<SawnPlank[]> Planks = new(() =>
        [
            .. new[] { "S1-01", "S1-15", "S1-16", "P2-07" }.Select(id =>
                RecordsOfSawn.Of(DemoPlans.Of("tender"), id)
            ),
        ]
    );

    private static readonly Lazy<string> Whole = new(() => SawnPlanksFile.Write(Planks.Value));

    /// <summary>Several hundred spoilings of a real record: bits, bytes, lines, numbers, members, whole planks.</summary>
    [Fact]
    public void EverySpoilingIsToldOrHarmless() =>
        Gen.Select(Gen.Int[0, 11], Gen.Double[0, 1], Gen.Int[0, 255], Gen.Int[0, 40])
            .Sample(
                (kind, at, by, size) =>
                {
                    byte[] spoiled = Spoiled(
                        Encoding.UTF8.GetBytes(Whole.Value),
                        kind,
                        at,
                        by,
                        size
                    );
                    var file = TextFile.Decode(spoiled, "sawn-planks.json");
                    if (file.Text is null)
                    {
                        return file.Fault is not null;
                    }

                    SawnReading read = SawnPlanksFile.Read(file.Text, "sawn-planks.json");
                    return read.Fault is { Severity: Severity.Error, Message.Length: > 20 }
                        ? read.Planks.IsEmpty
                        : SawnPlanksFile.Write(read.Planks) == Whole.Value;
                },
                iter: Long ? 20_000 : 600,
                threads: 2
            );

    /// <summary>One that was found beside the job is not looked for in its text.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void WhatToDoWithADamagedRecordGoesByHowItIsNamed(bool found) =>
        Assert.Equal(
            !found,
            AsBuiltReader.ToDo("sawn-planks.json", false, found).Contains("[as-built]")
        );

    [Fact]
    public void TheRecordItselfIsTaken()
    {
        SawnReading read = SawnPlanksFile.Read(Whole.Value, "sawn-planks.json");
        Assert.Null(read.Fault);
        Assert.False(read.Older);
        Assert.Equal(Whole.Value, SawnPlanksFile.Write(read.Planks));

        // As a mail or a checkout may leave it: other ends of lines.
        read = SawnPlanksFile.Read(Whole.Value.Replace("\n", "\r\n"), "sawn-planks.json");
        Assert.Null(read.Fault);
        Assert.Equal(Whole.Value, SawnPlanksFile.Write(read.Planks));
    }

    /// <summary>A record of before there was a checksum is taken if it agrees with itself, and known for what it is.</summary>
    [Fact]
    public void AnOlderRecordIsTakenAndKnown()
    {
        SawnReading read = SawnPlanksFile.Read(Older(Whole.Value), "sawn-planks.json");
        Assert.Null(read.Fault);
        Assert.True(read.Older);
        Assert.Equal(4, read.Planks.Length);
        Assert.All(read.Planks, p => Assert.Null(p.SawnFor));
        Assert.Equal(
            Planks
                .Value.OrderBy(p => p.Id.ToString(), StringComparer.Ordinal)
                .SelectMany(p => p.Shape.FlatCut),
            read.Planks.SelectMany(p => p.Shape.FlatCut)
        );
    }

    /// <summary>What damage an older record can be told by its own figures.</summary>
    [Theory]
    [InlineData("an outline moved 300 mm", "do not meet")]
    [InlineData("no ends", "no ends")]
    [InlineData("no edges", "edge")]
    [InlineData("a size below nought", "which no plank has")]
    [InlineData("a size beyond all reason", "which no plank has")]
    [InlineData("a point beyond all reason", "beyond any boat")]
    [InlineData("not a number", "not a record")]
    [InlineData("a neighbour that is no plank", "not a record")]
    [InlineData("cut off", "not a record")]
    [InlineData("twice", "recorded twice")]
    [InlineData("another schema", "checksum")]
    [InlineData("an edge's length of nought", "which no plank has")]
    [InlineData("a corner moved", "mm long on the hull")]
    public void DamageIsNamed(string what, string told)
    {
        string text = Older(Whole.Value);
        SawnPlank plank = Planks.Value[1];
        string Number(double v) => System.Text.Json.JsonSerializer.Serialize(v);
        SawnPlank[] With(SawnPlank changed) => [Planks.Value[0], changed];
        string spoiled = what switch
        {
            "an outline moved 300 mm" => Of(
                With(
                    plank.Shaped(s =>
                        s with
                        {
                            Outline = [.. s.Outline.Select(p => p with { X = p.X + 300 })],
                        }
                    )
                )
            ),
            "no ends" => Of(With(plank.WithoutEnds())),
            "no edges" => ForwardEdge().Replace(text, "\"forwardSeam\":[],\"forwardFlat\":[],"),
            "a size below nought" => Of(With(plank.Sized(s => s with { CutLengthMm = -1 }))),
            "a size beyond all reason" => Of(
                With(plank.Sized(s => s with { NetLengthMm = 1e308 }))
            ),
            "a point beyond all reason" => Of(
                With(plank.Shaped(s => s with { FlatCut = s.FlatCut.SetItem(3, new(1e308, 0)) }))
            ),
            "not a number" => text.Replace(Number(plank.Form.Sizes.NetLengthMm), "NaN"),
            "a neighbour that is no plank" => text.Replace(
                "\"neighbour\":\"S1-14\"",
                "\"neighbour\":\"S1-4\""
            ),
            "cut off" => text[..(text.Length / 2)],
            "twice" => Of([plank, plank]),
            "another schema" => text.Replace("plankfit-cut/1", "plankfit-cut/7"),
            "an edge's length of nought" => Of(
                With(plank.Shaped(s => s with { Forward = s.Forward with { SeamLengthMm = 0 } }))
            ),
            _ => Of(
                With(
                    plank.Shaped(s =>
                        s with
                        {
                            FlatNet = s.FlatNet.SetItem(
                                s.FlatNet.Length / 3,
                                s.FlatNet[s.FlatNet.Length / 3]
                                    + new PlankFit.Geometry.Primitives.Vec2(30, 0)
                            ),
                        }
                    )
                )
            ),
        };
        SawnReading read = SawnPlanksFile.Read(spoiled, "sawn-planks.json");
        Assert.Empty(read.Planks);
        Assert.Contains(told, read.Fault!.Message, StringComparison.Ordinal);
    }

    /// <summary>The text that an earlier program wrote: no checksum, and no word of the layer.</summary>
    internal static string Older(string text) =>
        SawnFor()
            .Replace(Checksum().Replace(text, ""), "")
            .Replace(SawnPlanksFile.Schema, SawnPlanksFile.OlderSchema, StringComparison.Ordinal);

    private static string Of(SawnPlank[] planks) => Older(SawnPlanksFile.Write(planks));

    private static byte[] Spoiled(byte[] whole, int kind, double at, int by, int size)
    {
        int i = Math.Min(whole.Length - 1, (int)(at * whole.Length));
        string text = Encoding.UTF8.GetString(whole);
        switch (kind)
        {
            case 0:
            case 1:
                whole[i] ^= (byte)(1 << (by & 7));
                return whole;
            case 2:
                whole[i] = (byte)by;
                return whole;
            case 3:
                return whole[..i];
            case 4:
                return [.. whole[..i], .. whole[Math.Min(whole.Length, i + 1 + size)..]];
            case 5:
                return [.. whole[..i], (byte)by, .. whole[i..]];
            case 6:
                return
                [
                    .. whole[..i],
                    .. new byte[Math.Min(size + 1, whole.Length - i)],
                    .. whole[Math.Min(whole.Length, i + size + 1)..],
                ];
            case 7:
                return Encoding.UTF8.GetBytes(OneNumber(text, at, by));
            case 8:
                return Encoding.UTF8.GetBytes(OneMember(text, at));
            case 9:
                return Encoding.UTF8.GetBytes(Lines(text, by, size));
            case 10:
                // The head, where the schema and the checksum stand.
                whole[i % 120] ^= (byte)(1 << (by & 7));
                return whole;
            default:
                return Encoding.UTF8.GetBytes(
                    OneNumber(
                        Older(text).Replace("cut/1", "cut/2", StringComparison.Ordinal),
                        at,
                        by
                    )
                );
        }
    }

    private static string OneNumber(string text, double at, int by)
    {
        MatchCollection numbers = Numbers().Matches(text);
        Match one = numbers[Math.Min(numbers.Count - 1, (int)(at * numbers.Count))];
        double was = double.Parse(one.Value, CultureInfo.InvariantCulture);
        string now = (by % 8) switch
        {
            0 => "-" + one.Value,
            1 => "1e308",
            2 => "1e999",
            3 => "NaN",
            4 => "null",
            5 => "\"\"",
            6 => (was + 300).ToString("R", CultureInfo.InvariantCulture),
            _ => (was + 1e-9).ToString("R", CultureInfo.InvariantCulture),
        };
        return string.Concat(text.AsSpan(0, one.Index), now, text.AsSpan(one.Index + one.Length));
    }

    private static string OneMember(string text, double at)
    {
        MatchCollection names = Names().Matches(text);
        Match one = names[Math.Min(names.Count - 1, (int)(at * names.Count))];
        return text.Remove(one.Index, one.Length).Insert(one.Index, "\"other\":");
    }

    /// <summary>Lines left out, twice, or in another order: a plank is a line.</summary>
    private static string Lines(string text, int by, int size)
    {
        List<string> lines = [.. text.Split('\n')];
        int k = size % lines.Count;
        switch (by % 3)
        {
            case 0:
                lines.RemoveAt(k);
                break;
            case 1:
                lines.Insert(k, lines[k]);
                break;
            default:
                lines.Reverse(Math.Min(k, lines.Count - 2), 2);
                break;
        }

        return string.Join('\n', lines);
    }

    [GeneratedRegex("(?<=[\\[,:])-?[0-9][0-9.eE+-]*")]
    private static partial Regex Numbers();

    [GeneratedRegex("\"[a-zA-Z]+\":")]
    private static partial Regex Names();

    [GeneratedRegex(" \"checksum\": \"[0-9a-f]*\",\n")]
    private static partial Regex Checksum();

    [GeneratedRegex(",\"sawnFor\":\\{[^}]*\\}")]
    private static partial Regex SawnFor();

    [GeneratedRegex("\"forwardSeam\":\\[\\[.*?\\]\\],\"forwardFlat\":\\[\\[.*?\\]\\],")]
    private static partial Regex ForwardEdge();
}
