using System.Reflection;
using System.Runtime.CompilerServices;

namespace PlankFit.Tests.Architecture;

/// <summary>
/// A record has no more than eight positional fields, a method no more than seven parameters: what belongs together is a value of its own.
/// </summary>
public sealed class SizeTests
{
    private const int MostFields = 8;
    private const int MostParameters = 7;

    private static readonly Type[] All =
    [
        .. new[]
        {
            typeof(PlankFit.Geometry.Primitives.Vec3),
            typeof(PlankFit.Planking.Whole.Job),
            typeof(PlankFit.Nesting.Effort.NestProgress),
            typeof(PlankFit.Reading.Jobs.JobReader),
            typeof(PlankFit.Draughting.Drawing),
            typeof(PlankFit.Export.Tables.Csv),
            typeof(PlankFit.App.Laying.LayRun),
            typeof(PlankFit.Pages.Serving.PageServer),
        }
            .SelectMany(t => t.Assembly.GetTypes())
            .Where(t => !Made(t)),
    ];

    [Fact]
    public void RecordsAreSmall() =>
        Assert.Empty(
            All.Where(t => Fields(t) > MostFields).Select(t => t.Name).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void MethodsTakeFewThings() =>
        Assert.Empty(
            All.SelectMany(t =>
                    t.GetMethods(
                            BindingFlags.Instance
                                | BindingFlags.Static
                                | BindingFlags.Public
                                | BindingFlags.NonPublic
                                | BindingFlags.DeclaredOnly
                        )
                        .Where(m =>
                            m.GetParameters().Length > MostParameters && !m.Name.Contains('<')
                        )
                        .Where(m => m.Name != "Deconstruct")
                        .Select(m => $"{t.Name}.{m.Name}")
                )
                .Distinct()
                .Order(StringComparer.Ordinal)
        );

    /// <summary>A record's positional fields are what it is taken apart into.</summary>
    [Fact]
    public void FieldsAreCounted() =>
        Assert.Equal(7, Fields(typeof(PlankFit.Planking.Fastenings.TimberGap)));

    private static int Fields(Type type) =>
        type.GetMethods(BindingFlags.Instance | BindingFlags.Public | BindingFlags.DeclaredOnly)
            .Where(m => m.Name == "Deconstruct")
            .Select(m => m.GetParameters().Length)
            .DefaultIfEmpty(0)
            .Max();

    private static bool Made(Type type) =>
        type.IsDefined(typeof(CompilerGeneratedAttribute), false) || type.Name.Contains('<');
}
