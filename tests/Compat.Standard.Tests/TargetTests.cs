using System.Runtime.Versioning;

namespace Compat.Standard.Tests;

/// <summary>These tests run against the build that they are here for.</summary>
public class TargetTests
{
    [Fact]
    public void The_library_is_the_netstandard_one()
    {
        var target = (TargetFrameworkAttribute)Assert.Single(typeof(KnowledgeBase).Assembly.GetCustomAttributes(typeof(TargetFrameworkAttribute), false));
        Assert.Equal(".NETStandard,Version=v2.0", target.FrameworkName);
    }
}
